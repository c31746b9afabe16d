import type { Complex } from "./eigenvalues";

/** A motion of two states that swings, or creeps back if `damping` is 1 or more. Negative damping grows. */
export interface Oscillation {
  /** Share of the critical damping. */
  readonly damping: number;
  /** Undamped natural frequency, rad/s. */
  readonly frequency: number;
}

/** Undefined where one of the two grows and the other dies: that is no oscillation. */
export function oscillation(a: Complex, b: Complex): Oscillation | undefined {
  const product = a.re * b.re - a.im * b.im;
  if (!(product > 0)) return undefined;
  const frequency = Math.sqrt(product);
  return { frequency, damping: -(a.re + b.re) / (2 * frequency) };
}

/** Seconds for a motion to halve, or to double where it grows. */
export const halvingTime = ({ re }: Complex): number => Math.LN2 / Math.abs(re);
