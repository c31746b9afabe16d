import * as z from "zod";
import type { DimensionName } from "../units/dimension";
import { dimensions, sameDimension } from "../units/dimension";
import type { Quantity } from "../units/quantity";
import type { Value } from "./value";

/** How a property's value is written, for completion, hover and the message when something else stands there. */
export type Form =
  | { readonly form: "quantity"; readonly dimension: DimensionName; readonly taper: boolean }
  | { readonly form: "count" }
  | { readonly form: "point" }
  /** Two shares or lengths, `8 % to 96 %`. */
  | { readonly form: "stretch"; readonly dimension: DimensionName }
  | { readonly form: "word"; readonly words: readonly string[] }
  | { readonly form: "flag" }
  | { readonly form: "text" }
  /** Names of blocks of these kinds; `*` for any part. */
  | { readonly form: "reference"; readonly kinds: readonly string[]; readonly list: boolean }
  | { readonly form: "outputs" }
  | { readonly form: "section" };

export interface Property<T = unknown> {
  readonly name: string;
  readonly form: Form;
  /** Judges a `Value` and gives it back in the form the model reads. Its issue messages complete "`span` …". */
  readonly schema: z.ZodType<T, Value>;
  /** What it means, for people: one or two sentences, no full program manual. */
  readonly text: string;
  /** Must be written: the model can't be built without. */
  readonly needed: boolean;
  /** As it would be written, `45 deg`; for hover and the reference. Empty when there is none. */
  readonly default: string;
  /** A value as it may stand after `=`: used in hover, reference and snippets. */
  readonly example: string;
  /** Read and checked, but nothing is computed from it yet; hover says so. */
  readonly later: boolean;
}

export interface Kind {
  readonly name: string;
  readonly text: string;
  /** Where it may stand: "file", "assembly", or the names of kinds. */
  readonly within: readonly string[];
  /** Does it stand for a thing with mass of its own? */
  readonly massive: boolean;
  readonly properties: Readonly<Record<string, Property>>;
  /** Accepts any dotted name as entry: `limits`, `weighed`. */
  readonly open: boolean;
  /** A whole block as an example, with all that is needed. */
  readonly example: string;
  readonly later: boolean;
}

/** The ends of a tapered value; one value alone stands for both. */
export type Taper = readonly [Quantity, Quantity];

const fits = (value: Value, dimension: DimensionName): value is Extract<Value, { form: "quantity" }> =>
  value.form === "quantity" && sameDimension(value.quantity.dimension, dimensions[dimension]);

/** Schemas of the forms. Each takes a `Value` and fails with what is expected there, in words. */
export const forms = {
  quantity: (dimension: DimensionName) =>
    z.custom<Value>((v) => fits(v as Value, dimension), `takes a ${dimension.replace(/_/g, " ")}`)
      .transform((v) => (v as Extract<Value, { form: "quantity" }>).quantity),

  taper: (dimension: DimensionName) =>
    z.custom<Value>((v) => {
      const value = v as Value;
      return fits(value, dimension) ||
        (value.form === "pair" && value.operator === "to" && fits(value.left, dimension) && fits(value.right, dimension));
    }, `takes a ${dimension.replace(/_/g, " ")}, or two with \`to\` between`)
      .transform((v): Taper => {
        const value = v as Value;
        const read = (x: Value) => (x as Extract<Value, { form: "quantity" }>).quantity;
        return value.form === "pair" ? [read(value.left), read(value.right)] : [read(value), read(value)];
      }),

  stretch: (dimension: DimensionName) =>
    z.custom<Value>((v) => {
      const value = v as Value;
      return value.form === "pair" && fits(value.left, dimension) && fits(value.right, dimension);
    }, `takes two values with \`to\` between, from inner to outer`)
      .transform((v): Taper => {
        const pair = v as { left: Extract<Value, { form: "quantity" }>; right: Extract<Value, { form: "quantity" }> };
        return [pair.left.quantity, pair.right.quantity];
      }),

  count: () =>
    z.custom<Value>((v) => fits(v as Value, "ratio") && Number.isInteger((v as { quantity: Quantity }).quantity.value) &&
      (v as { quantity: Quantity }).quantity.value > 0, "takes a whole number")
      .transform((v) => (v as Extract<Value, { form: "quantity" }>).quantity.value),

  point: () =>
    z.custom<Value>((v) => (v as Value).form === "point", "takes a point, (x, y, z)")
      .transform((v) => (v as Extract<Value, { form: "point" }>).point),

  word: <W extends string>(words: readonly W[]) =>
    z.custom<Value>((v) => (v as Value).form === "word" && words.includes((v as unknown as { text: W }).text), `is one of ${words.join(", ")}`)
      .transform((v) => (v as unknown as { text: W }).text),

  flag: () =>
    z.custom<Value>((v) => (v as Value).form === "flag", "is yes or no").transform((v) => (v as { yes: boolean }).yes),

  text: () =>
    z.custom<Value>((v) => (v as Value).form === "text", "takes text in quotes").transform((v) => (v as { text: string }).text),
} as const;
