import { risingCurve } from "../curve";
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
  const sumAt = risingCurve(knots, sums);
  const at = (index: number) => {
    const knot = knots.indexOf(index);
    return knot < 0 ? place(sumAt(index)) : knot === 0 ? from : knot === knots.length - 1 ? to : joint.get(sums[knot])!;
  };
  return {
    edges: Array.from({ length: count + 1 }, (_, i) => at(i)),
    middles: Array.from({ length: count }, (_, i) => at(i + 0.5)),
  };
}
