import { dimensions, sameDimension, type Dimension } from "./dimension";

/**
 * Names one written `±`, wherever its value goes. Two quantities that share a variable move together; separate
 * variables are independent (JCGM 100:2008, 5.1 and 5.2).
 */
export type VariableId = string;

/**
 * A number in SI units with its dimension and its first-order tolerance: for each variable, the change of the value
 * when that variable moves by its half-width (95 %).
 */
export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
  readonly spread?: ReadonlyMap<VariableId, number>;
}

export function quantity(value: number, dimension: Dimension, spread?: ReadonlyMap<VariableId, number>): Quantity {
  return spread && spread.size > 0 ? { value, dimension, spread } : { value, dimension };
}

export function isQuantity(x: unknown): x is Quantity {
  return typeof x === "object" && x !== null && "value" in x && "dimension" in x && Array.isArray(x.dimension);
}

/** Half-width of the band at 95 %: the root sum of squares over independent variables (JCGM 100:2008, eq. 10). */
export function halfWidth(q: Quantity): number {
  if (!q.spread) return 0;
  let sum = 0;
  for (const change of q.spread.values()) sum += change * change;
  return Math.sqrt(sum);
}

export class DimensionError extends Error {
  constructor(readonly left: Dimension, readonly right: Dimension) {
    super("dimensions differ");
  }
}

/** a·x + b·y of two spreads: what first-order propagation needs for every operation of two values. */
function combine(x: Quantity, a: number, y: Quantity, b: number): ReadonlyMap<VariableId, number> | undefined {
  if (!x.spread && !y.spread) return undefined;
  const out = new Map<VariableId, number>();
  for (const [id, change] of x.spread ?? []) out.set(id, a * change);
  for (const [id, change] of y.spread ?? []) out.set(id, (out.get(id) ?? 0) + b * change);
  return out;
}

export function add(x: Quantity, y: Quantity): Quantity {
  if (!sameDimension(x.dimension, y.dimension)) throw new DimensionError(x.dimension, y.dimension);
  return quantity(x.value + y.value, x.dimension, combine(x, 1, y, 1));
}

export function subtract(x: Quantity, y: Quantity): Quantity {
  if (!sameDimension(x.dimension, y.dimension)) throw new DimensionError(x.dimension, y.dimension);
  return quantity(x.value - y.value, x.dimension, combine(x, 1, y, -1));
}

const shift = (x: Dimension, y: Dimension, sign: 1 | -1): Dimension =>
  x.map((n, i) => n + sign * y[i]) as unknown as Dimension;

export function multiply(x: Quantity, y: Quantity): Quantity {
  return quantity(x.value * y.value, shift(x.dimension, y.dimension, 1), combine(x, y.value, y, x.value));
}

export function divide(x: Quantity, y: Quantity): Quantity {
  const value = x.value / y.value;
  return quantity(value, shift(x.dimension, y.dimension, -1), combine(x, 1 / y.value, y, -value / y.value));
}

export function raise(x: Quantity, n: number): Quantity {
  const dimension = x.dimension.map((e) => e * n) as unknown as Dimension;
  return chain(x, x.value ** n, n * x.value ** (n - 1), dimension);
}

export function negate(x: Quantity): Quantity {
  return chain(x, -x.value, -1, x.dimension);
}

/** f(x) with its slope at x: the chain rule for functions of one value. */
export function chain(x: Quantity, value: number, slope: number, dimension: Dimension): Quantity {
  if (!x.spread) return quantity(value, dimension);
  return quantity(value, dimension, new Map([...x.spread].map(([id, change]) => [id, slope * change])));
}

export const plain = (value: number): Quantity => quantity(value, dimensions.ratio);
export const metres = (value: number): Quantity => quantity(value, dimensions.length);
