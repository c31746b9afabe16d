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

/** Does a comment begin on the line before that place? */
function inComment(text: string, at: number): boolean {
  let quoted = false;
  for (let i = text.lastIndexOf("\n", at - 1) + 1; i < at; i++) {
    if (quoted && text[i] === "\\") i++;
    else if (text[i] === '"') quoted = !quoted;
    else if (text[i] === "#" && !quoted) return true;
  }
  return false;
}

/**
 * What the changed stretch alone tells: true within one comment, false where code changed. Undefined where it takes a
 * look at all pieces, so that an ordinary keystroke costs none.
 */
function byChange(a: string, b: string): boolean | undefined {
  const most = Math.min(a.length, b.length);
  let start = 0;
  while (start < most && a.charCodeAt(start) === b.charCodeAt(start)) start++;
  let end = 0;
  while (end < most - start && a.charCodeAt(a.length - 1 - end) === b.charCodeAt(b.length - 1 - end)) end++;
  const changed = a.slice(start, a.length - end) + b.slice(start, b.length - end);
  if (inComment(a, start)) return changed.includes("\n") ? undefined : true;
  return changed.includes("#") || !/\S/.test(changed) ? undefined : false;
}

function sameText(a: ParsedFile, b: ParsedFile): boolean {
  return a === b || (byChange(a.text, b.text) ?? substanceOf(a) === substanceOf(b));
}

/** Do two versions of a file, and of all it uses, say the same but for comments, spaces and empty lines? */
export function sameSubstance(a: SourceFile, b: SourceFile): boolean {
  if (!sameText(a.parsed, b.parsed)) return false;
  if (a.uri !== b.uri || a.uses.size !== b.uses.size) return false;
  return [...b.uses].every(([name, used]) => {
    const before = a.uses.get(name);
    return before !== undefined && sameSubstance(before, used);
  });
}
