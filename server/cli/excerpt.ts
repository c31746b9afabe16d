import type { ParsedFile } from "../../grammar/tree";
import type { Finding } from "../../shared/finding";
import { positionOf, rangeOf } from "../lines";
import type { Paint } from "./colour";

/** The widest piece of a line that is shown. */
const width = 100;

/** A finding as people read it: what and where, the line it stands in with a mark under the place, and what mends it. */
export function findingText(finding: Finding, parsed: ParsedFile, file: string, paint: Paint): string {
  const { line, character } = positionOf(parsed, finding.place.start);
  const { severity, code, message } = finding;
  const head = `${paint.bold(`${file}:${line + 1}:${character + 1}`)} ${paint.severity(severity, severity)} ${message} ${paint.faint(`[${code}]`)}`;
  const marks = (text: string) => paint.severity(severity, text);
  const fixes = (finding.fixes ?? []).map(({ title }) => `    fix: ${title}`);
  const related = (finding.related ?? []).filter(({ place }) => place.file === finding.place.file)
    .map((each) => `    ${each.message} (line ${positionOf(parsed, each.place.start).line + 1})`);
  return [head, ...excerpt(finding, parsed, marks, paint), ...related, ...fixes].join("\n");
}

function excerpt({ place }: Finding, parsed: ParsedFile, marks: (text: string) => string, paint: Paint): string[] {
  const { start, end } = rangeOf(parsed, place);
  const text = parsed.text.split(/\r\n|\n|\r/)[start.line] ?? "";
  if (text.trim() === "") return [];
  const stop = end.line === start.line ? end.character : text.length;
  const from = start.character < width - 20 ? 0 : start.character - 20;
  const shown = text.slice(from, from + width);
  const before = plain(text.slice(from, start.character));
  const length = Math.max(1, size(plain(text.slice(start.character, Math.min(stop, from + width)))));
  const number = String(start.line + 1);
  const gutter = " ".repeat(number.length);
  return [
    `  ${paint.faint(`${number} |`)} ${plain(shown)}`,
    `  ${paint.faint(`${gutter} |`)} ${" ".repeat(size(before))}${marks("^".repeat(length))}`,
  ];
}

const plain = (text: string): string => text.replace(/\t/g, "  ");

/** Columns on a terminal, near enough: signs, not UTF-16 units. */
const size = (text: string): number => [...text].length;
