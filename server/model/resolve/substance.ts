import type { ParsedFile, Piece } from "../../../grammar/tree";
import type { SourceFile } from "./instance";

const trivia = new Set<Piece["kind"]>(["comment", "space"]);
const substances = new WeakMap<ParsedFile, string>();

/** The text without comments and spaces; line ends stay, for they part entries. Worked out once a text. */
function substanceOf(parsed: ParsedFile): string {
  let known = substances.get(parsed);
  if (known === undefined) {
    const pieces = parsed.pieces.filter((piece) => !trivia.has(piece.kind)).map((piece) => (piece.kind === "newline" ? "\n" : piece.text));
    known = pieces.join(" ").replace(/ *\n[\n ]*/g, "\n").trim();
    substances.set(parsed, known);
  }
  return known;
}

/** Do two versions of a file, and of all it uses, say the same but for comments, spaces and empty lines? */
export function sameSubstance(a: SourceFile, b: SourceFile): boolean {
  if (a.parsed !== b.parsed && substanceOf(a.parsed) !== substanceOf(b.parsed)) return false;
  if (a.uri !== b.uri || a.uses.size !== b.uses.size) return false;
  return [...b.uses].every(([name, used]) => {
    const before = a.uses.get(name);
    return before !== undefined && sameSubstance(before, used);
  });
}
