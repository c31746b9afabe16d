import { dimensions, type DimensionName } from "../../grammar/units/dimension";
import { add, chain, quantity, type Quantity, type VariableId } from "../../grammar/units/quantity";

/** What a computation gives with one variable at each end of its band. */
export interface Change<T> {
  readonly variable: VariableId;
  readonly up: T;
  readonly down: T;
}

/** What it gives with all at their values, and with each variable moved. */
export interface Solved<T> {
  readonly middle: T;
  readonly changes: readonly Change<T>[];
}

/** A number out of it with its band to first order (JCGM 100:2008, 5.1.3); undefined where the number isn't there. */
export function banded<T>(solved: Solved<T>, dimension: DimensionName, pick: (of: T) => number): Quantity;
export function banded<T>(solved: Solved<T>, dimension: DimensionName, pick: (of: T) => number | undefined): Quantity | undefined;
export function banded<T>({ middle, changes }: Solved<T>, dimension: DimensionName, pick: (of: T) => number | undefined): Quantity | undefined {
  const value = pick(middle);
  if (value === undefined) return undefined;
  const spread = new Map(changes.map(({ variable, up, down }) => [variable, ((pick(up) ?? value) - (pick(down) ?? value)) / 2] as const));
  return quantity(value, dimensions[dimension], spread);
}

/** Numbers of a computation that rests on a shape and on a few values of the loading, such as its weight and balance point. */
export type Numbers = Readonly<Record<string, number | undefined>>;

/** A value of the loading that numbers rest on, and how far it is moved to see by how much they change. */
export interface Moved {
  readonly quantity: Quantity;
  readonly step: number;
}

/**
 * Numbers at the loading's own values, with their bands: each variable's by what it does to the shape, and by how it moves
 * the values, with which the numbers change straight for small moves. In steps between which other things may be done.
 */
export function* across<T, R extends Numbers>(
  { middle, changes }: Solved<T>, values: Readonly<Record<string, Moved>>,
  work: (of: T, values: Readonly<Record<string, number>>) => R | undefined,
): Generator<void, ((name: keyof R, dimension: DimensionName) => Quantity | undefined) | undefined> {
  const at = Object.fromEntries(Object.entries(values).map(([name, moved]) => [name, moved.quantity.value]));
  const here = work(middle, at);
  if (!here) return undefined;
  const slopes: { readonly quantity: Quantity; readonly step: number; readonly there: R }[] = [];
  for (const [name, { quantity: value, step }] of Object.entries(values)) {
    if (!value.spread) continue;
    yield;
    const there = work(middle, { ...at, [name]: value.value + step });
    if (there) slopes.push({ quantity: value, step, there });
  }
  const moved: Change<R>[] = [];
  for (const { variable, up, down } of changes) {
    yield;
    const [high, low] = [work(up, at), work(down, at)];
    if (high && low) moved.push({ variable, up: high, down: low });
  }
  return (name, dimension) => {
    const own = banded({ middle: here, changes: moved }, dimension, (of) => of[name]);
    return own && slopes.reduce((sum, { quantity: value, step, there }) => {
      const slope = ((there[name] ?? here[name]!) - here[name]!) / step;
      return add(sum, chain(value, 0, slope, sum.dimension));
    }, own);
  };
}
