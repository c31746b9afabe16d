import { dimensions, type DimensionName } from "../../grammar/units/dimension";
import { quantity, type Quantity, type VariableId } from "../../grammar/units/quantity";

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
