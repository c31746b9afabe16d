import { spline, splineAt, type Spline } from "./spline";

type Points = readonly (readonly [number, number])[];

/** Nodes of a closed polygon, from the trailing edge over the upper side to the nose and back; last and first coincide. */
export interface Panels {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Length along the outline up to each node. */
  readonly along: Float64Array;
  /** By panel, from node i to i + 1: length and unit tangent. The outward normal is (ty, −tx). */
  readonly length: Float64Array;
  readonly tx: Float64Array;
  readonly ty: Float64Array;
}

/** Panel length at the nose over its radius, and at the trailing edge over the chord; growth from one to the next. */
const noseShare = 0.16;
const tailLength = 0.004;
const growth = 0.13;

/**
 * Lays `perSide` panels on each side of an outline: short at the nose by its radius and at the trailing edge, growing at a
 * steady rate between, so that a laminar bubble in mid-chord still meets panels of about one per cent of the chord.
 */
export function panelled(outline: Points, perSide: number): Panels {
  const points = outline.filter(([x, y], i) => i === 0 || Math.hypot(x - outline[i - 1][0], y - outline[i - 1][1]) > 1e-9);
  const s = new Float64Array(points.length);
  for (let i = 1; i < s.length; i++) s[i] = s[i - 1] + Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
  const curve = {
    x: spline(s, Float64Array.from(points, ([x]) => x)),
    y: spline(s, Float64Array.from(points, ([, y]) => y)),
  };
  const total = s[s.length - 1];
  const nose = noseOf(curve, total);
  const first = Math.min(0.004, Math.max(0.0006, noseShare * noseRadius(curve, nose)));
  const upper = spread(nose, first, perSide).map((t) => nose - t).reverse();
  const lower = spread(total - nose, first, perSide).map((t) => nose + t);
  return polygon([...upper, ...lower.slice(1)], curve);
}

/** Place of the point farthest from the trailing edge. */
function noseOf(curve: { x: Spline; y: Spline }, total: number): number {
  const tail = [splineAt(curve.x, 0), splineAt(curve.y, 0)];
  const reach = (t: number) => Math.hypot(splineAt(curve.x, t) - tail[0], splineAt(curve.y, t) - tail[1]);
  let [low, high] = [0.3 * total, 0.7 * total];
  for (let i = 0; i < 60; i++) {
    const [a, b] = [low + 0.382 * (high - low), low + 0.618 * (high - low)];
    if (reach(a) > reach(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

/** Radius of the nose, from the turn of the outline over one per cent of the chord. */
function noseRadius(curve: { x: Spline; y: Spline }, nose: number): number {
  const step = 0.005;
  const direction = (t: number) => Math.atan2(
    splineAt(curve.y, t + step / 2) - splineAt(curve.y, t - step / 2), splineAt(curve.x, t + step / 2) - splineAt(curve.x, t - step / 2),
  );
  let turn = direction(nose + step) - direction(nose - step);
  while (turn < 0) turn += 2 * Math.PI;
  return (2 * step) / Math.max(turn, 0.1);
}

/** Places from 0 to `length`, `count` intervals: short at both ends, as long as need be between. */
function spread(length: number, first: number, count: number): number[] {
  const size = (t: number, most: number) => 1 / (1 / most + 1 / (first + growth * t) ** 1 + 1 / (tailLength + growth * (length - t)));
  const steps = 400;
  const number = (most: number) => {
    let sum = 0;
    for (let k = 0; k < steps; k++) sum += length / steps / size((length * (k + 0.5)) / steps, most);
    return sum;
  };
  let [low, high] = [1e-4, 10];
  for (let i = 0; i < 50; i++) {
    const middle = Math.sqrt(low * high);
    if (number(middle) > count) low = middle;
    else high = middle;
  }
  const places = [0];
  const scale = count / number(high);
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const piece = (length / steps / size((length * (k + 0.5)) / steps, high)) * scale;
    while (places.length < count && sum + piece >= places.length) places.push((length * (k + (places.length - sum) / piece)) / steps);
    sum += piece;
  }
  return [...places.slice(0, count), length];
}

function polygon(places: readonly number[], curve: { x: Spline; y: Spline }): Panels {
  const count = places.length;
  const x = Float64Array.from(places, (t) => splineAt(curve.x, t));
  const y = Float64Array.from(places, (t) => splineAt(curve.y, t));
  x[count - 1] = x[0];
  y[count - 1] = y[0];
  const along = new Float64Array(count);
  const [length, tx, ty] = [new Float64Array(count - 1), new Float64Array(count - 1), new Float64Array(count - 1)];
  for (let i = 0; i < count - 1; i++) {
    length[i] = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
    tx[i] = (x[i + 1] - x[i]) / length[i];
    ty[i] = (y[i + 1] - y[i]) / length[i];
    along[i + 1] = along[i] + length[i];
  }
  return { count, x, y, along, length, tx, ty };
}
