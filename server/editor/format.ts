import type { Range } from "vscode-languageserver-textdocument";
import type { TextEdit } from "vscode-languageserver";
import { formatEdits as edits } from "../../grammar/printer/format";
import { rangeOf, spanOf } from "../lines";
import type { View } from "./view";

/** The edits that bring a text into the usual layout; with a range only those that touch it. */
export function formatEdits({ parsed }: View, range?: Range): TextEdit[] {
  const within = range && spanOf(parsed, range);
  return edits(parsed.text)
    .filter(({ start, end }) => !within || (start <= within.end && end > within.start))
    .map((edit) => ({ range: rangeOf(parsed, edit), newText: edit.text }));
}
