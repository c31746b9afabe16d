import { standardGravity } from "../constants";
import type { LateralDerivatives } from "../derivatives/lateral";
import { eigenvalues, type Complex } from "./eigenvalues";
import { oscillation, type Oscillation } from "./motion";

/** Level flight, x along it. Any one system of units. */
export interface LateralFlight {
  readonly speed: number;
  /** Of the air. */
  readonly density: number;
  readonly gravity?: number;
  readonly area: number;
  readonly span: number;
  readonly mass: number;
  readonly rollInertia: number;
  readonly yawInertia: number;
  /** ∫xz dm, x aft and z up, or x ahead and z down. */
  readonly product: number;
  readonly derivatives: LateralDerivatives;
}

export interface LateralModes {
  /** Absent where no pair of eigenvalues swings. */
  readonly dutchRoll?: Oscillation;
  /** Seconds in which rolling falls to 1/e; absent where it does not die, or swings together with the spiral. */
  readonly rollTime?: number;
  /** The spiral's eigenvalue, 1/s; positive grows. Absent where it swings together with the roll. */
  readonly spiral?: number;
  /** By size, 1/s. */
  readonly roots: readonly Complex[];
}

/** Rows for sideslip, roll rate, yaw rate, bank (R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 5, with the product of inertia). */
export function lateralMatrix(f: LateralFlight): number[][] {
  const { speed: v, span: b, gravity = standardGravity, rollInertia: ix, yawInertia: iz, product: ixz } = f;
  const { sideslip, rollRate, yawRate } = f.derivatives;
  const pressure = (f.density * v * v * f.area) / 2;
  const rate = b / (2 * v);
  const row = (of: "side" | "roll" | "yaw", by: number) => [sideslip[of], rollRate[of] * rate, yawRate[of] * rate].map((c) => c * pressure * by);
  const side = row("side", 1 / (f.mass * v));
  const [roll, yaw] = [row("roll", b), row("yaw", b)];
  const whole = ix * iz - ixz * ixz;
  return [
    [side[0], side[1], side[2] - 1, gravity / v],
    [...roll.map((l, i) => (iz * l + ixz * yaw[i]) / whole), 0],
    [...yaw.map((n, i) => (ix * n + ixz * roll[i]) / whole), 0],
    [0, 1, 0, 0],
  ];
}

/** Roll, Dutch roll and spiral with controls fixed; undefined if an input isn't finite. */
export function lateralModes(flight: LateralFlight): LateralModes | undefined {
  return lateralModesOf(lateralMatrix(flight));
}

export function lateralModesOf(matrix: readonly (readonly number[])[]): LateralModes | undefined {
  const roots = eigenvalues(matrix);
  if (!roots) return undefined;
  const upper = roots.filter(({ im }) => im > 0);
  const real = roots.filter(({ im }) => im === 0).map(({ re }) => re);
  const dutchRoll = upper.length > 0 ? oscillation(upper[0], { re: upper[0].re, im: -upper[0].im }) : undefined;
  const [roll, spiral] = real.length > 0 ? [real[0], real[real.length - 1]] : [];
  return {
    roots,
    ...(dutchRoll && { dutchRoll }),
    ...(roll !== undefined && roll < 0 && { rollTime: -1 / roll }),
    ...(spiral !== undefined && { spiral }),
  };
}
