import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { testService } from "../../service";
import { isTextCode } from "../../../server/model/problems";
import type { Finding } from "../../../shared/finding";
import { read, type Snippet } from "./snippets";

/**
 * Every file in `faulty` holds texts with one mistake each. What is wrong stands between « and »; the line below says
 * `#! code: message`, and `#> ` with the line as its first fix leaves it. `UPDATE=1` writes what is found.
 */
const folder = join(__dirname, "faulty");

describe.each(readdirSync(folder))("%s", (name) => {
  const path = join(folder, name);
  const snippets = read(readFileSync(path, "utf8"));
  if (process.env.UPDATE) writeFileSync(path, snippets.map(written).join("\n\n") + "\n");
  it.each(snippets.map((snippet) => [snippet.title, snippet] as const))("%s", (_, snippet) => {
    expect(written(snippet)).toBe(snippet.source);
    // A fix takes away what it is for.
    const findings = findingsOf(snippet);
    for (const finding of findings.filter((f) => f.fixes?.[0])) {
      const same = (of: readonly Finding[]) => of.filter((f) => f.message === finding.message).length;
      expect(same(findingsOf({ ...snippet, text: fixed(snippet, finding) }))).toBeLessThan(same(findings));
    }
  });
});

function findingsOf({ text, files, aside }: Pick<Snippet, "text" | "files" | "aside">): Finding[] {
  const service = testService((uri) => (uri === "design.airframe" ? text : files[uri]));
  const { findings } = service.analysis("design.airframe")!.finishNow();
  return findings.filter((finding) => isTextCode(finding.code) && !aside.includes(finding.code));
}

/** The snippet with what is found in it, in the form of its file. */
function written(snippet: Snippet): string {
  const findings = findingsOf(snippet);
  const lines = snippet.text.split("\n");
  let offset = 0;
  const out = lines.flatMap((line) => {
    const [start, end] = [offset, offset + line.length];
    offset = end + 1;
    const here = findings.filter((f) => f.place.start >= start && f.place.start <= end);
    const spans = [...new Map(here.map((f) => [`${f.place.start} ${f.place.end}`, f.place])).values()];
    const marked = spans.sort((a, b) => b.start - a.start).reduce((marking, place) => {
      const [from, to] = [place.start - start, Math.min(place.end - start, line.length)];
      return `${marking.slice(0, from)}«${marking.slice(from, to)}»${marking.slice(to)}`;
    }, line);
    return [marked, ...here.flatMap((finding) => [`#! ${finding.code}: ${finding.message}`, ...fixLines(snippet, finding)])];
  });
  const files = Object.entries(snippet.files).flatMap(([name, text]) => [`#= ${name}`, text]);
  return [`## ${snippet.title}`, ...snippet.aside.map((code) => `#~ ${code}`), ...out, ...files].join("\n");
}

/** The lines that the first fix leaves differently. */
function fixLines(snippet: Snippet, finding: Finding): string[] {
  if (!finding.fixes?.[0]) return [];
  const before = new Set(snippet.text.split("\n"));
  return fixed(snippet, finding).split("\n").filter((line) => !before.has(line)).map((line) => `#> ${line}`);
}

function fixed({ text }: Snippet, finding: Finding): string {
  const edits = [...(finding.fixes?.[0]?.edits ?? [])].sort((a, b) => b.start - a.start);
  return edits.reduce((mended, edit) => mended.slice(0, edit.start) + edit.text + mended.slice(edit.end), text);
}
