import * as z from "zod";
import { dimensions, sameDimension, type DimensionName } from "../units/dimension";
import { usualUnits, wordsFor } from "../units/usual";
import type { Quantity } from "../units/quantity";
import type { Range } from "./range";
import type { SectionValue, Taper } from "./schema";
import type { BlockName, Value } from "./value";

/** Why a value was not taken: it has no unit, another dimension, or is otherwise none of what may stand there. */
export type Reason = "missing_unit" | "wrong_dimension" | "wrong_value";

export class Refusal {
  constructor(readonly message: string, readonly reason: Reason = "wrong_value") {}
}

/** A schema out of one function that reads a value or refuses it. The issue carries the reason in `params`. */
export function judged<T>(read: (value: Value) => T | Refusal): z.ZodType<T, Value> {
  return z.transform((value: Value, context): T => {
    const out = read(value);
    if (!(out instanceof Refusal)) return out;
    context.issues.push({ code: "custom", message: out.message, params: { reason: out.reason }, input: value });
    return z.NEVER;
  });
}

type Read<T> = (value: Value) => T | Refusal;

const either = <A, B>(first: A | Refusal, second: B | Refusal): readonly [A, B] | Refusal =>
  first instanceof Refusal ? first : second instanceof Refusal ? second : [first, second];

export const quantity = (dimension: DimensionName, range?: Range): Read<Quantity> => (value) => {
  const { words, metric } = usualUnits[dimension];
  if (value.form !== "quantity") return new Refusal(`takes ${words}`);
  const q = value.quantity;
  if (!sameDimension(q.dimension, dimensions[dimension])) {
    return sameDimension(q.dimension, dimensions.ratio)
      ? new Refusal(`takes ${words} and needs a unit, such as ${metric[0]}`, "missing_unit")
      : new Refusal(`takes ${words}, not ${wordsFor(q.dimension)}`, "wrong_dimension");
  }
  if (!Number.isFinite(q.value)) return new Refusal("is no finite number");
  return range && !range.holds(q.value) ? new Refusal(range.message) : q;
};

export const quantityOr = <const W extends string>(dimension: DimensionName, words: readonly W[], range?: Range): Read<Quantity | W> => (value) => {
  const { words: number } = usualUnits[dimension];
  if (value.form === "word") return words.find((w) => w === value.text) ?? new Refusal(`takes ${number}, or ${words.length > 1 ? "one of " : ""}${words.join(", ")}`);
  return quantity(dimension, range)(value);
};

export const taper = (dimension: DimensionName, range?: Range): Read<Taper> => (value) => {
  const read = quantity(dimension, range);
  if (value.form === "pair" && value.operator === "to") return either(read(value.left), read(value.right));
  if (value.form !== "quantity") return new Refusal(`takes ${usualUnits[dimension].words}, or two with \`to\` between`);
  const q = read(value);
  return q instanceof Refusal ? q : [q, q];
};

/** From inner to outer: the second may not lie before the first. */
export const stretch = (dimension: DimensionName, range?: Range): Read<Taper> => (value) => {
  if (value.form !== "pair") return new Refusal("takes two values with `to` between, from inner to outer");
  const read = quantity(dimension, range);
  const ends = either(read(value.left), read(value.right));
  if (ends instanceof Refusal || ends[1].value > ends[0].value) return ends;
  return new Refusal("goes from inner to outer: the second must be more than the first");
};

export const count = (least: number, most: number): Read<number> => (value) => {
  const q = quantity("ratio")(value);
  if (q instanceof Refusal || !Number.isInteger(q.value)) return new Refusal("takes a whole number");
  return q.value < least || q.value > most ? new Refusal(`must lie between ${least} and ${most}`) : q.value;
};

export const point: Read<readonly [Quantity, Quantity, Quantity]> = (value) => {
  if (value.form !== "point") return new Refusal("takes a point, (x, y, z)");
  const read = quantity("length");
  const [x, y, z] = value.point.map((q) => read({ form: "quantity", quantity: q }));
  const ends = either(x, either(y, z));
  return ends instanceof Refusal ? new Refusal(`takes lengths in its point: ${ends.message}`, ends.reason) : [ends[0], ...ends[1]];
};

/** The three edges of a box: a point whose numbers are all more than 0. */
export const box: Read<readonly [Quantity, Quantity, Quantity]> = (value) => {
  const read = point(value);
  if (read instanceof Refusal || read.every((q) => q.value > 0)) return read;
  return new Refusal("takes length, width and height, all more than 0");
};

export const word = <const W extends string>(words: readonly W[]): Read<W> => (value) => {
  const found = value.form === "word" ? words.find((w) => w === value.text) : undefined;
  return found ?? new Refusal(`is one of ${words.join(", ")}`);
};

export const flag: Read<boolean> = (value) => (value.form === "flag" ? value.yes : new Refusal("is yes or no"));

export const text: Read<string> = (value) => (value.form === "text" ? value.text : new Refusal("takes text in quotes"));

const named = (kinds: readonly string[]) =>
  kinds.includes("*") ? "part" : kinds.join(", ").replace(/, (?=[^,]*$)/, " or ");

export const block = (kinds: readonly string[]): Read<BlockName> => (value) => {
  if (value.form === "block" && (kinds.includes("*") || kinds.includes(value.block.kind))) return value.block;
  return new Refusal(`takes the name of a ${named(kinds)}`);
};

/** Reads each item, and stops at the first that doesn't fit. */
function all<T>(items: readonly Value[], read: Read<T>): readonly T[] | Refusal {
  const out: T[] = [];
  for (const item of items) {
    const one = read(item);
    if (one instanceof Refusal) return one;
    out.push(one);
  }
  return out;
}

/** One name, or a list of them. */
export const blocks = (kinds: readonly string[]): Read<readonly BlockName[]> => (value) => {
  if (value.form === "list" || value.form === "block") return all(value.form === "list" ? value.items : [value], block(kinds));
  return new Refusal(`takes the name of a ${named(kinds)}, or a list of names, [a, b]`);
};

export const names: Read<readonly string[]> = (value) => {
  const one: Read<string> = (item) =>
    item.form === "word" ? item.text : item.form === "block" ? item.block.path : new Refusal("takes names in its list");
  return value.form === "list" ? all(value.items, one) : new Refusal("takes a list of names, such as [a, b]");
};

export const outputs = (kinds: readonly string[]): Read<readonly (readonly BlockName[])[]> => (value) => {
  const one: Read<readonly BlockName[]> = (item) => {
    if (item.form === "word" && item.text === "none") return [];
    if (item.form === "list") return all(item.items, block(kinds));
    const read = block(kinds)(item);
    return read instanceof Refusal ? read : [read];
  };
  return value.form === "list" ? all(value.items, one) : new Refusal("takes a list, one entry a channel, such as [ail, none, ele]");
};

/** Four digits, or five of the standard mean lines (Abbott and von Doenhoff 1959, ch. 6): 210 to 250, 221 to 251. */
function nacaRefusal(digits: string): Refusal | undefined {
  if (!/^\d{4,5}$/.test(digits)) return new Refusal(`takes four or five digits in naca, such as "2412" or "23012"`);
  if (digits.endsWith("00")) return new Refusal(`has no thickness: the last two digits of "${digits}" are its per cent`);
  if (digits.length === 4) {
    return (digits[0] === "0") !== (digits[1] === "0")
      ? new Refusal(`has no such section as naca("${digits}"): first the camber, then where it is greatest, both 0 or neither`)
      : undefined;
  }
  return /^[1-9]([1-5]0|[2-5]1)/.test(digits)
    ? undefined
    : new Refusal(`has no such section as naca("${digits}"): five digits begin like 230 or, with reflex, like 231`);
}

export const section = (withBlocks: boolean): Read<SectionValue> => (value) => {
  if (value.form === "naca") return nacaRefusal(value.digits) ?? value;
  if (value.form === "flat") {
    const t = value.thickness;
    const fits = sameDimension(t.dimension, dimensions.ratio) && t.value > 0 && t.value <= 0.3;
    return fits ? value : new Refusal("takes a thickness of at most 30 % of the chord in flat, such as flat(3 %)");
  }
  if (withBlocks && value.form === "block" && value.block.kind === "foil") return value;
  const ways = `naca("2412") or flat(3 %)`;
  return new Refusal(withBlocks ? `takes ${ways}, or the name of a foil` : `takes ${ways}`);
};

/** One section for both ends of a panel, or two with `to` between. */
export const sections: Read<readonly [SectionValue, SectionValue]> = (value) => {
  const read = section(true);
  if (value.form === "pair" && value.operator === "to") return either(read(value.left), read(value.right));
  const one = read(value);
  return one instanceof Refusal ? one : [one, one];
};
