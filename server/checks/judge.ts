import { halfWidth, subtract, type Quantity } from "../../grammar/units/quantity";
import type { Subject } from "./check";
import type { FigureSet } from "../figures/figure-set";

export interface Judgement {
  readonly fails: boolean;
  /** The value's band reaches across the limit, whichever side the value itself lies on. */
  readonly straddles: boolean;
}

/** Rounding of sums must not make a value that is written at its limit fail. */
const rounding = 1e-9;

/** A value against the least or the most it may be; both of the same dimension. */
export function judge(value: Quantity, limit: Quantity, side: "least" | "most"): Judgement {
  const spare = side === "least" ? subtract(value, limit) : subtract(limit, value);
  return { fails: spare.value < -rounding * Math.abs(limit.value), straddles: Math.abs(spare.value) < halfWidth(spare) };
}

/** What a message adds where the band reaches across the limit. */
export const bandNote = ({ straddles }: Judgement): string => (straddles ? "; its band reaches across the limit" : "");

export interface Judged extends Judgement {
  readonly set: FigureSet;
  readonly value: Quantity;
}

/** The loadings in which a figure is past its limit, or its band reaches past it: the worst first. */
export function past(sets: readonly FigureSet[], figure: string, limit: Quantity, side: "least" | "most"): Judged[] {
  const sign = side === "least" ? 1 : -1;
  return sets
    .flatMap((set): Judged[] => {
      const value = set.value(figure);
      return value ? [{ set, value, ...judge(value, limit, side) }] : [];
    })
    .filter((one) => one.fails || one.straddles)
    .sort((a, b) => sign * (a.value.value - b.value.value));
}

/**
 * Where a finding holds, for its message: nothing for a design with one unnamed loading, or where all its loadings say the
 * same; else the loadings, the first being the one whose value the message names.
 */
export function where(found: readonly Judged[], { sets }: Subject): string {
  const [worst, ...others] = found;
  if (!worst.set.loading.block) return "";
  const same = found.length === sets.length && others.every((one) => Math.abs(one.value.value - worst.value.value) <= rounding * Math.abs(worst.value.value));
  if (same) return "";
  return ` in ${worst.set.loading.name}${others.length > 0 ? ` (also in ${others.map((one) => one.set.loading.name).join(", ")})` : ""}`;
}
