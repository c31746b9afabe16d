import { bracketedRoot } from "../root";

/** A figure over speed that may not be known everywhere. */
export type Curve = (x: number) => number | undefined;

export interface Extreme {
  readonly at: number;
  readonly value: number;
  /** Set where the best lies on an end of the range: farther out it might be better still. */
  readonly end?: "low" | "high";
}

/** Places of a first look: 5 % apart over a range of one to ten. A peak narrower than that may be missed. */
const places = 48;

const golden = (Math.sqrt(5) - 1) / 2;

/** The same places for every curve over a range, so that a caller who remembers what is dear is asked the same again. */
function grid(low: number, high: number): number[] {
  return Array.from({ length: places + 1 }, (_, i) => (i === 0 ? low : i === places ? high : low * (high / low) ** (i / places)));
}

const known = (value: number | undefined): value is number => value !== undefined && Number.isFinite(value);

/**
 * Where a curve is greatest between `low` (above 0) and `high`: the best of a first look, then golden section (J. Kiefer, Proc.
 * Amer. Math. Soc. 4, 1953) between its neighbours. Undefined where the curve is nowhere known.
 */
export function greatest(curve: Curve, low: number, high: number): Extreme | undefined {
  if (!(low > 0 && high > low)) return undefined;
  const xs = grid(low, high);
  const f = (x: number) => {
    const value = curve(x);
    return known(value) ? value : -Infinity;
  };
  const values = xs.map(f);
  const best = values.reduce((b, value, i) => (value > values[b] ? i : b), 0);
  if (values[best] === -Infinity) return undefined;
  const found = narrowed(f, xs[Math.max(0, best - 1)], xs[Math.min(places, best + 1)]);
  if (found.value > values[best]) return best > 0 && best < places ? found : endOr(found, low, high);
  return { at: xs[best], value: values[best], ...(best === 0 && { end: "low" as const }), ...(best === places && { end: "high" as const }) };
}

/** Where a curve is least; `value` is the curve's. */
export function least(curve: Curve, low: number, high: number): Extreme | undefined {
  const found = greatest((x) => { const value = curve(x); return value === undefined ? undefined : -value; }, low, high);
  return found && { ...found, value: -found.value };
}

/** The highest x at which a curve falls through zero; undefined where it doesn't, or isn't known on both sides. */
export function highestFall(curve: Curve, low: number, high: number): number | undefined {
  if (!(low > 0 && high > low)) return undefined;
  const xs = grid(low, high);
  for (let i = places; i > 0; i--) {
    const [above, below] = [curve(xs[i]), curve(xs[i - 1])];
    if (!known(above) || !known(below) || above > 0 || below < 0) continue;
    if (above === 0) return xs[i];
    const root = bracketedRoot((x) => curve(x) ?? NaN, xs[i - 1], xs[i], xs[i] * 1e-10);
    if (known(root) && known(curve(root))) return root;
  }
  return undefined;
}

function narrowed(f: (x: number) => number, from: number, to: number): Extreme {
  let [a, b] = [from, to];
  let [x, y] = [b - golden * (b - a), a + golden * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  while (b - a > 1e-8 * b) {
    if (fx >= fy) {
      [b, y, fy] = [y, x, fx];
      x = b - golden * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + golden * (b - a);
      fy = f(y);
    }
  }
  return fx >= fy ? { at: x, value: fx } : { at: y, value: fy };
}

function endOr(found: Extreme, low: number, high: number): Extreme {
  const near = (end: number) => Math.abs(found.at - end) < 1e-7 * end;
  return { ...found, ...(near(low) && { end: "low" as const }), ...(near(high) && { end: "high" as const }) };
}
