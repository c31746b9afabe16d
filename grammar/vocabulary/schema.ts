import type * as z from "zod";
import type { DimensionName } from "../units/dimension";
import type { Quantity } from "../units/quantity";
import type { Value } from "./value";

/** How a property's value is written, for completion, hover and the message when something else stands there. */
export type Form =
  /** With `words`, one of them may stand instead of a number. */
  | { readonly form: "quantity"; readonly dimension: DimensionName; readonly taper: boolean; readonly words: readonly string[] }
  | { readonly form: "count" }
  | { readonly form: "point" }
  /** Two shares or lengths, `8 % to 96 %`. */
  | { readonly form: "stretch"; readonly dimension: DimensionName }
  | { readonly form: "word"; readonly words: readonly string[] }
  | { readonly form: "flag" }
  | { readonly form: "text" }
  /** The name of a block of these kinds, `*` for any part; with `list`, one or several in `[ ]`. */
  | { readonly form: "reference"; readonly kinds: readonly string[]; readonly list: boolean }
  /** Names of the block's own children, `[tip, tube]`. */
  | { readonly form: "names" }
  /** Channel by channel: a name, the word `none`, or a list of names for a Y-lead. */
  | { readonly form: "outputs"; readonly kinds: readonly string[] }
  /** `naca("2412")`, `flat(3 %)` or, with `blocks`, the name of a `foil`; with `taper`, two with `to` between. */
  | { readonly form: "section"; readonly blocks: boolean; readonly taper: boolean };

export interface Property<T = unknown> {
  readonly name: string;
  readonly form: Form;
  /** Judges a `Value` and gives it back in the form the model reads. Its issue messages complete "`span` …". */
  readonly schema: z.ZodType<T, Value>;
  /** What it means, for people: one or two sentences, no full program manual. */
  readonly text: string;
  /** Must be written: the model can't be built without. */
  readonly needed: boolean;
  /** Properties, or kinds of child blocks, that make it unneeded where one of them is written. */
  readonly unless: readonly string[];
  /** A panel after the first takes it from the tip of the one before when it is not written. */
  readonly inherited: boolean;
  /** As it would be written, `45 deg`, or in words, `as the width`. Empty when there is none. */
  readonly default: string;
  /** A value as it may stand after `=`: used in hover, reference and snippets. */
  readonly example: string;
  /** Read and checked, but nothing is computed from it yet; hover says so. */
  readonly later: boolean;
}

export type Properties = Readonly<Record<string, Property>>;

export interface Kind {
  readonly name: string;
  readonly text: string;
  /** Where it may stand: "file", or the names of kinds. */
  readonly within: readonly string[];
  /** Does it stand for a thing with mass of its own? */
  readonly massive: boolean;
  readonly properties: Properties;
  /** Groups of properties of which at most one may be written. */
  readonly exclusive: readonly (readonly string[])[];
  /** Accepts any dotted name as entry: `limits`, `weighed`. */
  readonly open: boolean;
  /** A whole block as an example, with all that is needed. */
  readonly example: string;
  readonly later: boolean;
}

/** The ends of a tapered value; one value alone stands for both. */
export type Taper = readonly [Quantity, Quantity];

export type SectionValue = Extract<Value, { form: "naca" | "flat" | "block" }>;

/** What hover, reference and completion say of a word that is `later`. */
export const notComputedYet = "Not computed yet: it is read and checked, but no figure rests on it.";

/** The words that may stand as a value of that form. */
export const wordsOfForm = (form: Form | undefined): readonly string[] => (form?.form === "word" || form?.form === "quantity" ? form.words : []);
