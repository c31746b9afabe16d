import type { StripLoad } from "./strip-loads";

/** Where a strip and the vortices that trail from its ends stand, seen from behind. */
export type WakeStrip = Pick<StripLoad, "y" | "z" | "ends">;

/**
 * Induced drag over dynamic pressure, m², at an angle of attack (rad): from the flow across the wake far downstream (L.
 * Prandtl, NACA Technical Note 182; Munk's theorem). All strips of both sides are needed.
 */
export function inducedDrag(strips: readonly (WakeStrip & Pick<StripLoad, "circulation">)[], angle: number): number {
  const strength = strips.map(({ circulation }) => circulation.slope * angle + circulation.zero);
  return wakeFlow(strips, strength).reduce((drag, flow, i) => drag + strength[i] * flow, 0);
}

/**
 * What the wakes of strips of some circulation (over flight speed, m) do at each strip, m: times that strip's own circulation
 * it is its induced drag over dynamic pressure. For two loadings, the one's circulations times the other's flow is the same
 * either way round.
 */
export function wakeFlow(strips: readonly WakeStrip[], strength: ArrayLike<number>): Float64Array {
  return Float64Array.from(strips, (at) => {
    const [ty, tz] = [at.ends[1][0] - at.ends[0][0], at.ends[1][1] - at.ends[0][1]];
    let across = 0;
    strips.forEach(({ ends: [a, b] }, j) => {
      across += strength[j] * (turn(at, b, ty, tz) - turn(at, a, ty, tz));
    });
    return -across / (2 * Math.PI);
  });
}

/** Velocity of a line vortex along x across a strip, times the strip's length and 2π. */
function turn(at: WakeStrip, [y, z]: readonly [number, number], ty: number, tz: number): number {
  const [dy, dz] = [at.y - y, at.z - z];
  const square = dy * dy + dz * dz;
  return square > 0 ? (ty * dy + tz * dz) / square : 0;
}

/**
 * Span efficiency e = L² / (π q² b² D) for lift (m²) and induced drag (m²) over dynamic pressure and span b (m); 1 is the
 * ellipse of a flat wake. Undefined where nothing lifts.
 */
export function spanEfficiency(lift: number, drag: number, span: number): number | undefined {
  const efficiency = lift ** 2 / (Math.PI * span ** 2 * drag);
  return drag > 0 && Number.isFinite(efficiency) && lift !== 0 ? efficiency : undefined;
}
