import { foreignComment } from "./parser/foreign-comment";
import { AirframeParser } from "./parser/parser";
import { piecesOf } from "./parser/pieces";
import { lex } from "./tokens";
import type { ParsedFile, Piece } from "./tree";

const parser = new AirframeParser();

/**
 * Parses any text, never throws. What is wrong with it stands in `issues`, one for each mistake, in the order of the
 * text; the tree holds all that is whole. `pieces` joined are the text.
 */
export function parse(text: string): ParsedFile {
  const { tokens, foreign } = lex(text);
  const { tree, issues } = parser.read(text, tokens);
  for (const comment of foreign) issues.push(foreignComment(text, comment));
  issues.sort((a, b) => a.start - b.start || a.end - b.end);
  let pieces: readonly Piece[] | undefined;
  return { text, tree, issues, get pieces() { return (pieces ??= piecesOf(text, tokens)); } };
}
