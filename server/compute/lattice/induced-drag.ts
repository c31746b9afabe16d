import type { StripLoad } from "./strip-loads";

/** Where a strip and the vortices that trail from its ends stand, seen from behind. */
export type WakeStrip = Pick<StripLoad, "y" | "z" | "ends">;

/**
 * Induced drag over dynamic pressure, m², at an angle of attack (rad): from the flow across the wake far downstream (L.
 * Prandtl, NACA Technical Note 182; Munk's theorem). All strips of both sides are needed.
 */
export function inducedDrag(strips: readonly (WakeStrip & Pick<StripLoad, "circulation">)[], angle: number): number {
  const strength = strips.map(({ circulation }) => circulation.slope * angle + circulation.zero);
  return wakeFlows(strips, [strength])[0].reduce((drag, flow, i) => drag + strength[i] * flow, 0);
}

/**
 * What the wakes of strips do at each strip, m, for each of several loadings (circulation over flight speed, m): times that strip's
 * own circulation it is its induced drag over dynamic pressure. For two loadings, the one's circulations times the other's flow is
 * the same either way round.
 */
export function wakeFlows(strips: readonly WakeStrip[], strengths: readonly ArrayLike<number>[]): Float64Array[] {
  const flows = strengths.map(() => new Float64Array(strips.length));
  const ends = Float64Array.from(strips.flatMap(({ ends: [a, b] }) => [...a, ...b]));
  strips.forEach(({ y, z }, i) => {
    const [ty, tz] = [ends[4 * i + 2] - ends[4 * i], ends[4 * i + 3] - ends[4 * i + 1]];
    for (let j = 0; j < strips.length; j++) {
      const own = turn(y - ends[4 * j + 2], z - ends[4 * j + 3], ty, tz) - turn(y - ends[4 * j], z - ends[4 * j + 1], ty, tz);
      for (let m = 0; m < flows.length; m++) flows[m][i] -= (strengths[m][j] * own) / (2 * Math.PI);
    }
  });
  return flows;
}

/** Velocity of a line vortex along x across a strip, times the strip's length and 2π. */
function turn(dy: number, dz: number, ty: number, tz: number): number {
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
