/**
 * One step of B. Thwaites' method for laminar layers (Aeronautical Quarterly 1, 1949): θ² u⁶ grows by 0.45 ν ∫u⁵ ds. The
 * integral over an interval is taken with the speed straight between its ends.
 */
export function thwaitesIntegral(from: number, to: number, length: number): number {
  const rise = to - from;
  if (Math.abs(rise) < 1e-6 * to) return length * to ** 5;
  return (length * (to ** 6 - from ** 6)) / (6 * rise);
}

/** Momentum thickness from the integral of u⁵ up to there. */
export const thwaitesTheta = (integral: number, speed: number, reynolds: number): number => Math.sqrt((0.45 * integral) / (reynolds * speed ** 6));

/** Shape parameter by λ = θ²⁄ν · du⁄ds, as fitted by F. M. White (Viscous Fluid Flow, 1974, from memory) and by H. C. Curle for falling speed. */
export function thwaitesShape(lambda: number): number {
  const l = Math.max(-0.09, Math.min(0.25, lambda));
  return l >= 0 ? 2.61 - 3.75 * l + 5.24 * l * l : 2.088 + 0.0731 / (0.14 + l);
}
