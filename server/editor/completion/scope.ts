import type { Piece } from "../../../grammar/tree";

/** A block around the cursor, or the file, as far as the pieces tell; holds for half-typed text too. */
export interface Scope {
  /** The kind, or "file". */
  readonly kind: string;
  readonly name?: string;
  /** The path after `from`. */
  readonly from?: string;
  readonly parent?: Scope;
  /** Column of the line it was opened on. */
  readonly indent: number;
  readonly line: number;
  /** Properties written in it, with the offset their entry begins at. */
  readonly properties: Map<string, number>;
  readonly children: { readonly kind: string; readonly name: string }[];
}

/** The word being typed: nothing yet where `start` and `end` are the cursor. */
export interface Word {
  readonly start: number;
  /** The end of the word, which may lie behind the cursor. */
  readonly end: number;
  /** What stands before the cursor. */
  readonly text: string;
}

/** Where the cursor is. */
export interface Cursor {
  readonly offset: number;
  readonly scope: Scope;
  /** What the entry holds before the word, without spaces and comments. */
  readonly before: readonly Piece[];
  /** Opening brackets of `before` that are not closed. */
  readonly brackets: readonly Piece[];
  readonly word: Word;
  /** The next piece after the word on its line. */
  readonly next?: Piece;
}

export const openScope = (kind: string, indent: number, line: number, parent?: Scope, name?: string, from?: string): Scope =>
  ({ kind, name, from, parent, indent, line, properties: new Map(), children: [] });
