import type { Vec3 } from "../../model/design/geometry";
import { spanOf } from "./sides";
import { quarterPoint, type Piece } from "./station";

/** Integrals over pieces: `along` them as built, or over their projection on the plan. */
export interface Measure {
  readonly area: number;
  /** ∫ c² ds */
  readonly chordSquared: number;
  /** ∫ c · (quarter-chord point) ds */
  readonly quarter: Vec3;
  /** ∫ c cos²Γ ds and ∫ c sin²Γ ds, Γ from horizontal. */
  readonly level: number;
  readonly upright: number;
}

/** Exact for straight edges; the usual definitions of area and mean chord. */
export function measure(pieces: readonly Piece[], by: "along" | "plan"): Measure {
  const sum = { area: 0, chordSquared: 0, quarter: [0, 0, 0] as [number, number, number], level: 0, upright: 0 };
  for (const piece of pieces) {
    const length = spanOf(piece);
    const across = Math.abs(piece.outer.leadingEdge[1] - piece.inner.leadingEdge[1]);
    const ds = by === "along" ? length : across;
    const [c, d] = [piece.inner.chord, piece.outer.chord];
    const [p, q] = [quarterPoint(piece.inner), quarterPoint(piece.outer)];
    const area = (ds * (c + d)) / 2;
    const level = (across / length) ** 2;
    sum.area += area;
    sum.level += area * level;
    sum.upright += area * (1 - level);
    sum.chordSquared += (ds * (c * c + c * d + d * d)) / 3;
    for (let i = 0; i < 3; i++) sum.quarter[i] += (ds * (2 * c * p[i] + c * q[i] + d * p[i] + 2 * d * q[i])) / 6;
  }
  return sum;
}
