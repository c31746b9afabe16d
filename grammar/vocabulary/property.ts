import type * as z from "zod";
import type { DimensionName } from "../units/dimension";
import * as forms from "./forms";
import type { Reason } from "./forms";
import type { Range } from "./range";
import type { Form, Kind, Properties, Property } from "./schema";
import type { Value } from "./value";

interface Words {
  readonly text: string;
  readonly example: string;
  readonly needed?: boolean;
  readonly unless?: readonly string[];
  readonly inherited?: boolean;
  readonly default?: string;
  readonly later?: boolean;
}

interface Ranged extends Words {
  readonly range?: Range;
}

function declare<T>(form: Form, schema: z.ZodType<T, Value>, words: Words): Property<T> {
  return {
    name: "", form, schema, text: words.text, example: words.example, needed: words.needed ?? false,
    unless: words.unless ?? [], inherited: words.inherited ?? false, default: words.default ?? "", later: words.later ?? false,
  };
}

/** One property of each form. `named` gives them their names. */
export const property = {
  quantity: (dimension: DimensionName, words: Ranged) =>
    declare({ form: "quantity", dimension, taper: false, words: [] }, forms.judged(forms.quantity(dimension, words.range)), words),
  /** A number, or one of some words that stand for one. */
  quantityOr: <const W extends string>(dimension: DimensionName, choice: readonly W[], words: Ranged) =>
    declare({ form: "quantity", dimension, taper: false, words: choice }, forms.judged(forms.quantityOr(dimension, choice, words.range)), words),
  /** One value, or two with `to` between: from root to tip. */
  taper: (dimension: DimensionName, words: Ranged) =>
    declare({ form: "quantity", dimension, taper: true, words: [] }, forms.judged(forms.taper(dimension, words.range)), words),
  stretch: (dimension: DimensionName, words: Ranged) =>
    declare({ form: "stretch", dimension }, forms.judged(forms.stretch(dimension, words.range)), words),
  count: (words: Words & { readonly least?: number; readonly most: number }) =>
    declare({ form: "count" }, forms.judged(forms.count(words.least ?? 1, words.most)), words),
  point: (words: Words) => declare({ form: "point" }, forms.judged(forms.point), words),
  box: (words: Words) => declare({ form: "point" }, forms.judged(forms.box), words),
  word: <const W extends string>(choice: readonly W[], words: Words) =>
    declare({ form: "word", words: choice }, forms.judged(forms.word(choice)), words),
  flag: (words: Words) => declare({ form: "flag" }, forms.judged(forms.flag), words),
  text: (words: Words) => declare({ form: "text" }, forms.judged(forms.text), words),
  reference: (kinds: readonly string[], words: Words) =>
    declare({ form: "reference", kinds, list: false }, forms.judged(forms.block(kinds)), words),
  references: (kinds: readonly string[], words: Words) =>
    declare({ form: "reference", kinds, list: true }, forms.judged(forms.blocks(kinds)), words),
  names: (words: Words) => declare({ form: "names" }, forms.judged(forms.names), words),
  outputs: (kinds: readonly string[], words: Words) =>
    declare({ form: "outputs", kinds }, forms.judged(forms.outputs(kinds)), words),
  /** `naca` or `flat` only: what a `foil` block itself is made of. */
  shape: (words: Words) => declare({ form: "section", blocks: false, taper: false }, forms.judged(forms.section(false)), words),
  section: (words: Words) => declare({ form: "section", blocks: true, taper: false }, forms.judged(forms.section(true)), words),
  sections: (words: Words) => declare({ form: "section", blocks: true, taper: true }, forms.judged(forms.sections), words),
} as const;

/** Gives each property the name it has in the record. */
export function named<P extends Properties>(table: P): P {
  return Object.fromEntries(Object.entries(table).map(([name, one]) => [name, { ...one, name }])) as P;
}

type Sketch = Pick<Kind, "text" | "within" | "example"> & Partial<Pick<Kind, "massive" | "exclusive" | "open" | "later">>;

/** A record that knows its own names only: `constructor` typed as a property finds nothing. */
export const bare = <T>(table: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
  Object.assign(Object.create(null) as Record<string, T>, table);

/** A kind with its properties; what is not said is no, none or empty. */
export function kind(name: string, properties: Properties, sketch: Sketch): Kind {
  return {
    name, properties: bare(properties), text: sketch.text, within: sketch.within, example: sketch.example, massive: sketch.massive ?? false,
    exclusive: sketch.exclusive ?? [], open: sketch.open ?? false, later: sketch.later ?? false,
  };
}

/** The same properties, all of them only read for now. */
export function allLater<P extends Properties>(table: P): P {
  return Object.fromEntries(Object.entries(table).map(([name, one]) => [name, { ...one, later: true }])) as P;
}

export type Judgement<T> =
  | { readonly fits: true; readonly value: T }
  | { readonly fits: false; readonly message: string; readonly reason: Reason };

/** Judges a value by its property. The message completes "`span` …". */
export function judge<T>(subject: Property<T>, value: Value): Judgement<T> {
  const result = subject.schema.safeParse(value);
  if (result.success) return { fits: true, value: result.data };
  const issue = result.error.issues[0];
  const reason = issue.code === "custom" ? (issue.params?.reason as Reason | undefined) : undefined;
  return { fits: false, message: issue.message, reason: reason ?? "wrong_value" };
}
