import { EOF, type IToken } from "chevrotain";
import { endOf, LCurly, Let, Name, RCurly, Require, Use } from "../tokens";
import type { Span, TextEdit } from "../tree";
import { findProperty, kinds } from "../vocabulary/index";

/** A block whose `}` is yet to come. */
export interface Open {
  readonly kind: string;
  /** For people: `panel inner`. */
  readonly head: string;
  /** The line the block begins on, and the column that line begins at. */
  readonly line: number;
  readonly indent: number;
  /** The column of the first line inside. */
  readonly inner: number;
  /** Where the brace stands, or would. */
  readonly brace: Span;
}

/** Braces without a partner, found by counting alone. Only where there are any is a layout taken for a sign. */
export interface Balance {
  readonly opened: ReadonlySet<number>;
  readonly closed: ReadonlySet<number>;
}

export function balanceOf(tokens: readonly IToken[]): Balance {
  const open: number[] = [];
  const closed = new Set<number>();
  for (const { tokenType, startOffset } of tokens) {
    if (tokenType === LCurly) open.push(startOffset);
    else if (tokenType === RCurly && open.pop() === undefined) closed.add(startOffset);
  }
  return { opened: new Set(open), closed };
}

const kindNames: ReadonlySet<string> = new Set(Object.keys(kinds));
export const isKind = (word: string): boolean => kindNames.has(word);

/** May a block or property of that name stand in a block of that kind? In the file, for `undefined`. */
function fits(parent: string | undefined, word: string, isBlock: boolean): boolean {
  if (parent === undefined) return isBlock && isKind(word) && kinds[word].within.includes("file");
  if (!isKind(parent)) return false;
  if (isBlock) return isKind(word) && kinds[word].within.includes(parent);
  return kinds[parent].open || findProperty(parent, word) !== undefined;
}

/**
 * Must what begins a line at `token` belong further out than the innermost open block, whose `}` then is missing?
 * So for `use`, `let`, `require` and kinds that can't stand in the block but can outside, when indented no more than
 * the block's own line; and, where some brace is never closed, for properties and for what is indented less than
 * the rest of the block.
 */
export function belongsOutside(opens: readonly Open[], token: IToken, isBlock: boolean, unbalanced: boolean): boolean {
  const own = opens[opens.length - 1];
  if ((token.startColumn ?? 0) > own.indent || token.startLine === own.line) return false;
  const { tokenType, image } = token;
  if (tokenType === Use || tokenType === Let || tokenType === Require) return true;
  if (tokenType !== Name) return false;
  if (!isBlock && !unbalanced) return false;
  if (unbalanced && own.inner > own.indent) return true;
  if (fits(own.kind, image, isBlock)) return false;
  return [...opens.slice(0, -1).map((open) => open.kind), undefined].some((kind) => fits(kind, image, isBlock));
}

/** Does a `}` that begins its line stand under an outer block, so that the inner one's is missing? */
export function closesOuter(opens: readonly Open[], token: IToken, beginsLine: boolean): boolean {
  const column = token.startColumn ?? 0;
  return beginsLine && column < opens[opens.length - 1].indent && opens.some((open) => open.indent === column);
}

/** What puts in a missing `}`: at the end of a block on one line, else on a line of its own. */
export function closingEdit(open: Open, last: IToken, text: string): TextEdit {
  const at = last.tokenType === EOF ? 0 : endOf(last);
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  return { start: at, end: at, text: last.startLine === open.line ? " }" : `${lineEnd}${" ".repeat(open.indent - 1)}}` };
}
