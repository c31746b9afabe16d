import type { Span } from "../../../grammar/tree";

/** What an item is: decides its icon. */
export type Sort = "kind" | "property" | "statement" | "word" | "unit" | "block" | "let" | "function" | "figure" | "check" | "file" | "loading";

/** What its documentation is about; resolved when an item is looked at. */
export interface Topic {
  readonly about: Sort;
  readonly name: string;
  /** The kind that a property belongs to. */
  readonly of?: string;
}

/** One thing that could stand at the cursor. */
export interface Item {
  readonly label: string;
  readonly sort: Sort;
  /** 0 fits best; within a rank in the order given. */
  readonly rank: number;
  /** What is inserted; the label if not given. */
  readonly text?: string;
  /** The same with tab stops, for clients that take snippets. */
  readonly snippet?: string;
  readonly detail?: string;
  /** What is replaced, if more than the word at the cursor. */
  readonly replace?: Span;
  readonly topic?: Topic;
}
