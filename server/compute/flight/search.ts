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
 * Where a curve is greatest between `low` (above 0) and `high`: the best of a first look, then parabolas and golden section between its
 * neighbours (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, ch. 5). Undefined where the curve is nowhere known.
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
  const end = best === 0 ? "low" : best === places ? "high" : undefined;
  const inward = best === 0 ? low + 1e-6 * (xs[1] - low) : high - 1e-6 * (high - xs[places - 1]);
  const found = end && !(f(inward) > values[best]) ? undefined : narrowed(f, xs[Math.max(0, best - 1)], xs[Math.min(places, best + 1)]);
  if (found && found.value > values[best]) return end ? endOr(found, low, high) : found;
  return { at: xs[best], value: values[best], ...(end && { end }) };
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

/** Where `f` is greatest between two places with a greater one between them: parabolas where they are safe, golden section elsewhere. */
function narrowed(f: (x: number) => number, from: number, to: number): Extreme {
  let [a, b] = [from, to];
  let x = a + (1 - golden) * (b - a);
  let [w, v] = [x, x];
  let fx = f(x);
  let [fw, fv] = [fx, fx];
  let [step, before] = [0, 0];
  for (let round = 0; round < 60; round++) {
    const middle = (a + b) / 2;
    const tolerance = 1e-8 * b;
    if (Math.abs(x - middle) <= 2 * tolerance - (b - a) / 2) break;
    const bowed = Math.abs(before) > tolerance ? vertex(x, fx, w, fw, v, fv) : NaN;
    const safe = Math.abs(bowed) < Math.abs(before) / 2 && x + bowed > a && x + bowed < b;
    if (!safe) before = (x < middle ? b : a) - x;
    else before = step;
    step = safe ? bowed : (1 - golden) * before;
    const next = x + (Math.abs(step) >= tolerance ? step : Math.sign(step) * tolerance);
    const value = f(next);
    if (value >= fx) {
      if (next < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, next, value];
      continue;
    }
    if (next < x) a = next;
    else b = next;
    if (value >= fw || w === x) [v, fv, w, fw] = [w, fw, next, value];
    else if (value >= fv || v === x || v === w) [v, fv] = [next, value];
  }
  return { at: x, value: fx };
}

/** From x to the top of the parabola through three points; not a number where they lie on a line, or two are one. */
function vertex(x: number, fx: number, w: number, fw: number, v: number, fv: number): number {
  const r = (x - w) * (fx - fv);
  const q = (x - v) * (fx - fw);
  return -((x - v) * q - (x - w) * r) / (2 * (q - r));
}

function endOr(found: Extreme, low: number, high: number): Extreme {
  const near = (end: number) => Math.abs(found.at - end) < 1e-7 * end;
  return { ...found, ...(near(low) && { end: "low" as const }), ...(near(high) && { end: "high" as const }) };
}
