import type { Quantity } from "../units/quantity";

/** A block meant by name. `target` is the model's own object for it; the vocabulary only hands it on. */
export interface BlockName {
  readonly path: string;
  readonly kind: string;
  readonly target: object;
}

/** What an expression works out to, before the vocabulary has judged whether it fits its property. */
export type Value =
  | { readonly form: "quantity"; readonly quantity: Quantity }
  | { readonly form: "point"; readonly point: readonly [Quantity, Quantity, Quantity] }
  | { readonly form: "pair"; readonly operator: "to" | ".."; readonly left: Value; readonly right: Value }
  | { readonly form: "text"; readonly text: string }
  | { readonly form: "flag"; readonly yes: boolean }
  /** A name that is no reference: one of a set of words, such as `clockwise`. */
  | { readonly form: "word"; readonly text: string }
  /** A block, by its full path: `main`, `ail.left`, `nose.esc`. */
  | { readonly form: "block"; readonly block: BlockName }
  | { readonly form: "naca"; readonly digits: string }
  | { readonly form: "flat"; readonly thickness: Quantity }
  | { readonly form: "list"; readonly items: readonly Value[] };
