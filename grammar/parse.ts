import { foreignComment } from "./parser/foreign-comment";
import { AirframeParser } from "./parser/parser";
import { piecesOf } from "./parser/pieces";
import { changeBetween, reread } from "./reread";
import { lex } from "./tokens";
import type { FileNode, ParsedFile, Piece, SyntaxIssue } from "./tree";

const parser = new AirframeParser();

/**
 * Parses any text, never throws. What is wrong with it stands in `issues`, one for each mistake, in the order of the
 * text; the tree holds all that is whole. `pieces` joined are the text. `before`: an earlier text of the same file; where
 * only one statement differs the others' nodes are taken over, and the answer is the same.
 */
export function parse(text: string, before?: ParsedFile): ParsedFile {
  const change = before && changeBetween(before, text);
  const tree = change && reread(before, text, change, (part) => read(part));
  if (tree) return parsed(text, tree, []);
  const whole = read(text);
  return parsed(text, whole.tree, whole.issues);
}

function read(text: string): { tree: FileNode; issues: SyntaxIssue[] } {
  const { tokens, foreign } = lex(text);
  const { tree, issues } = parser.read(text, tokens);
  for (const comment of foreign) issues.push(foreignComment(text, comment));
  issues.sort((a, b) => a.start - b.start || a.end - b.end);
  return { tree, issues };
}

function parsed(text: string, tree: FileNode, issues: readonly SyntaxIssue[]): ParsedFile {
  let pieces: readonly Piece[] | undefined;
  return { text, tree, issues, get pieces() { return (pieces ??= piecesOf(text, lex(text).tokens)); } };
}
