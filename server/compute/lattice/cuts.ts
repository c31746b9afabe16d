import { accumulate, type Density } from "./spacing";

/** Edges and middles of strips side by side: the middle is where half a strip has gone by. */
export interface Cuts {
  readonly edges: readonly number[];
  readonly middles: readonly number[];
}

/** A joint gets an edge of its own if this many strips fit on each side of it; else one strip reaches over it. */
const room = 2;

/**
 * Cuts a stretch into strips by a density, with an edge at each of `joints` that has room for it. Strips widen and narrow
 * smoothly to meet the joints: a step in width costs more than a joint missed.
 */
export function cutsBetween(density: Density, from: number, to: number, joints: readonly number[] = []): Cuts {
  const { total, sumTo, place } = accumulate(density, from, to);
  const count = Math.max(1, Math.round(total));
  const sums = [0];
  for (const joint of joints) {
    const sum = sumTo(joint);
    if (sum - sums[sums.length - 1] >= room && total - sum >= room) sums.push(sum);
  }
  sums.push(total);
  const knots = sums.map((sum) => Math.round((sum * count) / total));
  const joint = new Map(joints.map((at) => [sumTo(at), at]));
  const sumAt = smooth(knots, sums);
  const at = (index: number) => {
    const knot = knots.indexOf(index);
    return knot < 0 ? place(sumAt(index)) : knot === 0 ? from : knot === knots.length - 1 ? to : joint.get(sums[knot])!;
  };
  return {
    edges: Array.from({ length: count + 1 }, (_, i) => at(i)),
    middles: Array.from({ length: count }, (_, i) => at(i + 0.5)),
  };
}

/** A rising smooth curve through rising points (F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5, 1984). */
function smooth(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const rise = xs.slice(1).map((x, i) => (ys[i + 1] - ys[i]) / (x - xs[i]));
  const slope = xs.map((_, i) => {
    if (i === 0) return rise[0];
    if (i === xs.length - 1) return rise[i - 1];
    const [a, b] = [xs[i] - xs[i - 1], xs[i + 1] - xs[i]];
    return (3 * (a + b)) / ((2 * b + a) / rise[i - 1] + (b + 2 * a) / rise[i]);
  });
  return (x) => {
    let i = 1;
    while (i < xs.length - 1 && xs[i] < x) i++;
    const width = xs[i] - xs[i - 1];
    const t = (x - xs[i - 1]) / width;
    const s = 1 - t;
    return s * s * (1 + 2 * t) * ys[i - 1] + t * t * (1 + 2 * s) * ys[i] + s * t * width * (s * slope[i - 1] - t * slope[i]);
  };
}
