import type { VariableId } from "../../../grammar/units/quantity";
import type { Settled } from "../../model/design/design";
import { settler, type Settler } from "../../model/design/settle";

/** A computed number, and how it changes when each variable moves by its half-width (signed). */
export interface Banded {
  readonly value: number;
  readonly spread: ReadonlyMap<VariableId, number>;
}

/**
 * Carries the tolerances of a model through `f` to first order: for each variable half the difference of `f` between
 * its ends, JCGM 100:2008, 5.1.3, note 2. Quantities that share a variable move together, separate ones are
 * independent. Curvature within a band is not modelled. A figure missing at one end takes the other end's
 * difference from the middle; missing at both, it does not depend on the variable.
 */
export function propagate<T, K extends string>(
  model: T,
  f: (settled: Settled<T>) => Readonly<Partial<Record<K, number>>>,
): Partial<Record<K, Banded>> {
  return propagateSettled(settler(model), f);
}

/** `propagate` over a model that was prepared before. */
export function propagateSettled<T, K extends string>(
  model: Settler<T>,
  f: (settled: Settled<T>) => Readonly<Partial<Record<K, number>>>,
): Partial<Record<K, Banded>> {
  const middle = f(model.nominal);
  const spreads = new Map<K, Map<VariableId, number>>();
  for (const key in middle) spreads.set(key, new Map());
  for (const variable of model.variables) {
    const up = f(model.at(variable, 1));
    const down = f(model.at(variable, -1));
    for (const [key, spread] of spreads) {
      const change = halfDifference(middle[key] as number, up[key], down[key]);
      if (change !== 0) spread.set(variable, change);
    }
  }
  const out: Partial<Record<K, Banded>> = {};
  for (const [key, spread] of spreads) out[key] = { value: middle[key] as number, spread };
  return out;
}

function halfDifference(middle: number, up: number | undefined, down: number | undefined): number {
  const above = usable(up);
  const below = usable(down);
  if (above && below) return (up - down) / 2;
  if (above) return up - middle;
  return below ? middle - down : 0;

  function usable(x: number | undefined): x is number {
    return x !== undefined && Number.isFinite(x);
  }
}
