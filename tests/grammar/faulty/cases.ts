import { parse } from "../../../grammar/parse";
import type { TextEdit } from "../../../grammar/tree";

/**
 * A faulty snippet as it stands in a file: `## title`, the text with «» around what is wrong, `! message`, and where
 * there is a fix, `> its title` and the text after it.
 */
export interface Case {
  readonly title: string;
  readonly snippet: string;
  readonly written: string;
}

export function casesOf(file: string): Case[] {
  return file.split(/^## /m).slice(1).map((block) => {
    const written = `## ${block.trimEnd()}\n`;
    const [title, ...lines] = written.trimEnd().split("\n");
    const end = lines.findIndex((line) => line.startsWith("! "));
    return { title: title.slice(3), snippet: lines.slice(0, end < 0 ? undefined : end).join("\n").replace(/[«»]/g, ""), written };
  });
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  return [...edits].sort((a, b) => b.start - a.start).reduce((so, { start, end, text: put }) => so.slice(0, start) + put + so.slice(end), text);
}

/** The case as the parser sees it: what its file should say. */
export function render({ title, snippet }: Case): string {
  const { issues } = parse(snippet);
  const shown = issues.map((issue) => {
    const marked = `${snippet.slice(0, issue.start)}«${snippet.slice(issue.start, issue.end)}»${snippet.slice(issue.end)}`;
    const lines = [marked, `! ${issue.message}`];
    if (issue.fix) lines.push(`> ${issue.fix.title}`, applied(snippet, issue.fix.edits));
    return lines.join("\n");
  });
  return `## ${title}\n${shown.length > 0 ? shown.join("\n") : `${snippet}\n! nothing found`}\n`;
}
