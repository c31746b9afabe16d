import type { IToken } from "chevrotain";
import { Degree, endOf, ForeignString, keywordNames, Name, NumberToken, PointNumber, SizeToken, StringToken, UnclosedString,
  Unknown } from "../tokens";
import type { Piece } from "../tree";

const kindsByType = new Map<unknown, Piece["kind"]>([
  [Name, "name"], [Degree, "name"], [NumberToken, "number"], [PointNumber, "number"], [SizeToken, "number"],
  [StringToken, "string"], [UnclosedString, "string"], [ForeignString, "string"], [Unknown, "unknown"],
]);

function kindOf({ tokenType }: IToken): Piece["kind"] {
  return kindsByType.get(tokenType) ?? (keywordNames.has(tokenType.name) ? "keyword" : "symbol");
}

const trivia = /(\r\n|\n|\r)|(#[^\r\n]*|\/\/[^\r\n]*|\/\*(?:[^*]|\*(?!\/))*\*\/)|(?:(?!\/\/|\/\*)[^\r\n#])+/g;

/** All of the text, in pieces: the tokens, and what stands between them. */
export function piecesOf(text: string, tokens: readonly IToken[]): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  const between = (end: number): void => {
    for (const [piece, newline, comment] of text.slice(at, end).matchAll(trivia)) {
      const kind = newline !== undefined ? "newline" : comment !== undefined ? "comment" : "space";
      pieces.push({ kind, text: piece, start: at, end: at + piece.length });
      at += piece.length;
    }
  };
  for (const token of tokens) {
    between(token.startOffset);
    at = endOf(token);
    pieces.push({ kind: kindOf(token), text: token.image, start: token.startOffset, end: at });
  }
  between(text.length);
  return pieces;
}
