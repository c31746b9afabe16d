import type { TextEdit } from "./tree";

/** The text with all edits made. They name stretches of `text` and must not overlap; their order does not matter. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const sorted = edits.map((edit, i) => ({ ...edit, i })).sort((a, b) => a.start - b.start || a.end - b.end || a.i - b.i);
  let out = "";
  let at = 0;
  for (const { start, end, text: put } of sorted) {
    if (start < at || end < start || end > text.length) throw new RangeError(`edit ${start}–${end} overlaps another or lies outside the text`);
    out += text.slice(at, start) + put;
    at = end;
  }
  return out + text.slice(at);
}
