import { TextDocument, type Position, type Range } from "vscode-languageserver-textdocument";
import type { ParsedFile, Span } from "../grammar/tree";

const known = new WeakMap<ParsedFile, TextDocument>();

function linesOf(parsed: ParsedFile): TextDocument {
  let lines = known.get(parsed);
  if (!lines) known.set(parsed, (lines = TextDocument.create("", "airframe", 0, parsed.text)));
  return lines;
}

/** Line and character (UTF-16, both from 0) of an offset. */
export const positionOf = (parsed: ParsedFile, offset: number): Position => linesOf(parsed).positionAt(offset);

/** A stretch of the text as lines and characters. */
export const rangeOf = (parsed: ParsedFile, span: Span): Range => ({
  start: positionOf(parsed, span.start), end: positionOf(parsed, span.end),
});

/** The offset of a position; one past the end of its line or of the text is the end of that. */
export const offsetOf = (parsed: ParsedFile, position: Position): number => linesOf(parsed).offsetAt(position);

export const spanOf = (parsed: ParsedFile, range: Range): Span => ({
  start: offsetOf(parsed, range.start), end: offsetOf(parsed, range.end),
});
