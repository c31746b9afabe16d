import { likelyUnit, plainSymbol } from "../../grammar/parser/unit-words";
import { dimensions, sameDimension, type DimensionName } from "../../grammar/units/dimension";
import { compoundOf } from "../../grammar/units/units";
import { usualUnits, wordsFor } from "../../grammar/units/usual";
import type { Range } from "../../grammar/vocabulary/range";
import { Failure } from "./io";

/** What an option takes. */
export interface Wanted {
  /** `--diameter` */
  readonly option: string;
  readonly dimension: DimensionName;
  readonly range: Range;
  /** The unit of a number without one, where the option's name says it. */
  readonly bare?: string;
}

const written = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;

/** The SI value of a number with a unit of the language, such as `10 in`; a failure that says what is wrong with it. */
export function readQuantity(text: string, wanted: Wanted): number {
  const { option, dimension, range, bare } = wanted;
  const { words, metric: [usual] } = usualUnits[dimension];
  const [, number, rest] = written.exec(text.trim()) ?? [];
  if (number === undefined) throw new Failure(`${option} takes ${words} such as "10 ${bare ?? usual}", not "${text}"`);
  const unit = plainSymbol(rest.replace(/\s+/g, "")) || bare;
  if (unit === undefined) throw new Failure(`${option} takes ${words}: ${number} has no unit; did you mean ${number} ${usual}?`);
  const compound = compoundOf(unit);
  if (!compound) {
    const meant = likelyUnit(unit);
    throw new Failure(`${option}: no unit "${rest}"; ${meant ? `did you mean ${number} ${meant}?` : `a unit such as ${usual} comes after the number`}`);
  }
  if (!sameDimension(compound.dimension, dimensions[dimension])) {
    throw new Failure(`${option} takes ${words}; ${text.trim()} is ${wordsFor(compound.dimension)}`);
  }
  const value = Number(number) * compound.scale + compound.offset;
  if (!Number.isFinite(value) || !range.holds(value)) throw new Failure(`${option} ${range.message}; here it is ${text.trim()}`);
  return value;
}

/** One quantity, or two as `0..25 m/s`, whose first may leave its unit to the second. */
export function readStretch(text: string, wanted: Wanted): readonly [low: number, high: number] {
  const [first, second, ...more] = text.split("..");
  if (second === undefined) {
    const value = readQuantity(first, wanted);
    return [value, value];
  }
  if (more.length > 0) throw new Failure(`${wanted.option} goes from one value to another, such as "0..25 m/s", not "${text}"`);
  const [, , unit = ""] = written.exec(second.trim()) ?? [];
  const high = readQuantity(second, wanted);
  const low = readQuantity(written.exec(first.trim())?.[2] === "" ? `${first} ${unit}` : first, wanted);
  if (low > high) throw new Failure(`${wanted.option} goes from the lower to the higher; ${text.trim()} does not`);
  return [low, high];
}
