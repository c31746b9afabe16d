import type { Range } from "vscode-languageserver-textdocument";
import type { TextEdit } from "vscode-languageserver";
import { parse } from "../../grammar/parse";
import { rangeOf, spanOf } from "../lines";
import { editsBetween } from "./text-edits";
import type { View } from "./view";

const format = (text: string): string => text; // STUB until grammar/printer lands

/** The edits that bring a text into the usual layout; with a range only those that touch it. */
export function formatEdits({ parsed }: View, range?: Range): TextEdit[] {
  const within = range && spanOf(parsed, range);
  return editsBetween(parsed.pieces, parse(format(parsed.text)).pieces)
    .filter(({ start, end }) => !within || (start <= within.end && end >= within.start))
    .map((edit) => ({ range: rangeOf(parsed, edit), newText: edit.text }));
}
