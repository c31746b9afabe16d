/**
 * Growth of the most amplified Tollmien–Schlichting waves, by the envelope of the Falkner–Skan profiles' spatial growth
 * (M. Drela, AIAA 2003-4066, after M. Drela and M. B. Giles, AIAA Journal 25(10), 1987; constants from memory).
 */

/** Common logarithm of the Reynolds number on θ from which waves grow. */
export function criticalReynolds(shape: number): number {
  const inverse = 1 / (shape - 1);
  return 2.492 * inverse ** 0.43 + 0.7 * (Math.tanh(14 * inverse - 9.24) + 1);
}

/** Width of the ramp by which growth sets in, in common logarithms of the Reynolds number. */
const ramp = 0.08;

/** d(logarithm of the amplitude)⁄d(distance⁄θ). */
export function amplification(shape: number, reynolds: number): number {
  const r = (Math.log10(Math.max(reynolds, 1)) - criticalReynolds(shape) + ramp) / (2 * ramp);
  if (r <= 0) return 0;
  const onset = r >= 1 ? 1 : r * r * (3 - 2 * r);
  const inverse = 1 / (shape - 1);
  const perReynolds = 0.028 * (shape - 1) - 0.0345 * Math.exp(-((3.87 * inverse - 2.52) ** 2));
  const reynoldsPerLength = -0.05 + 2.7 * inverse - 5.5 * inverse ** 2 + 3 * inverse ** 3 + 0.1 * Math.exp(-20 * inverse);
  return onset * Math.max(0, perReynolds * reynoldsPerLength);
}
