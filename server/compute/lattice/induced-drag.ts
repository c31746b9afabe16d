import type { StripLoad } from "./strip-loads";

/**
 * Induced drag over dynamic pressure, m², at an angle of attack (rad): from the flow across the wake far downstream (L.
 * Prandtl, NACA Technical Note 182; Munk's theorem). All strips of both sides are needed.
 */
export function inducedDrag(strips: readonly StripLoad[], angle: number): number {
  const strength = strips.map(({ circulation }) => circulation.slope * angle + circulation.zero);
  let drag = 0;
  strips.forEach((at, i) => {
    const [ty, tz] = [at.ends[1][0] - at.ends[0][0], at.ends[1][1] - at.ends[0][1]];
    let across = 0;
    strips.forEach(({ ends: [a, b] }, j) => {
      across += strength[j] * (turn(at, b, ty, tz) - turn(at, a, ty, tz));
    });
    drag -= (strength[i] * across) / (2 * Math.PI);
  });
  return drag;
}

/** Velocity of a line vortex along x across a strip, times the strip's length and 2π. */
function turn(at: StripLoad, [y, z]: readonly [number, number], ty: number, tz: number): number {
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
