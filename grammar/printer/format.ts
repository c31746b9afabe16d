import { parse } from "../parse";
import type { TextEdit } from "../tree";
import { lineEdits } from "./line-edits";
import { Printer } from "./print";
import { Rows } from "./rows";
import { sameMeaning } from "./same";
import { Wording } from "./words";

/**
 * The text in the usual layout. Comments stay, in number and order; what it means stays; lines with an issue stay as
 * they were typed. Formatting a formatted text changes nothing. Line ends stay LF or CRLF, whichever there are more of.
 */
export function format(text: string): string {
  const mark = /^\uFEFF*/.exec(text)?.[0] ?? "";
  return mark + formatted(text.slice(mark.length));
}

function formatted(text: string): string {
  const parsed = parse(text);
  const crlf = text.split("\r\n").length - 1;
  const end = crlf > 0 && crlf * 2 >= text.split("\n").length - 1 ? "\r\n" : "\n";
  const lines = new Printer(new Wording(parsed)).lines(new Rows(parsed).read());
  const printed = lines.map((line) => line + end).join("");
  // Faulty text can be read in another way once the lines around it have moved. It is not worth the risk.
  return sameMeaning(parsed, parse(printed)) ? printed : text;
}

/** The edits, each of whole lines, that turn the text into its formatted self. */
export function formatEdits(text: string): TextEdit[] {
  return lineEdits(text, format(text));
}
