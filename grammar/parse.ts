import { lex } from "./tokens";
import { AirframeParser } from "./parser/parser";
import { piecesOf } from "./parser/pieces";
import type { ParsedFile, Piece } from "./tree";

const parser = new AirframeParser();

/**
 * Parses any text, never throws. What is wrong with it stands in `issues`, one for each mistake, in the order of the
 * text; the tree holds all that is whole. `pieces` joined are the text.
 */
export function parse(text: string): ParsedFile {
  const { tokens, foreign } = lex(text);
  const { tree, issues } = parser.read(text, tokens);
  for (const { startOffset: start, image } of foreign) {
    const inner = image.startsWith("//") ? image.slice(2) : image.slice(2, -2);
    const written = inner.trim().split(/[ \t]*\r?\n[ \t*]*/).map((line) => `# ${line}`.trimEnd()).join("\n");
    issues.push({
      start, end: start + 2, message: `a comment begins with #, not ${image.slice(0, 2)}`,
      fix: { title: "Write #", edits: [{ start, end: start + image.length, text: written }] },
    });
  }
  issues.sort((a, b) => a.start - b.start || a.end - b.end);
  let pieces: readonly Piece[] | undefined;
  return { text, tree, issues, get pieces() { return (pieces ??= piecesOf(text, tokens)); } };
}
