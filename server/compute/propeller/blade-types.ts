import type { Propeller } from "../../model/design/power";
import type { BladeSection } from "./section";

/**
 * Blades of each type as means over measured ones: chord over radius and local pitch over nominal pitch, at `radii` shares
 * of the radius. From the geometry in J. B. Brandt, R. W. Deters, G. K. Ananda, O. D. Dantsker and M. S. Selig, UIUC
 * Propeller Database, vol. 1: 11 thin electric (8 of 9 to 11 in), 12 slow-flight of two makes, 34 sport of several. The
 * folding ones have no measured geometry and take the thin type's.
 *
 * Blade angles do not grow as fast as the pitch stamped on the blade: the advance ratio without thrust, which hardly depends
 * on anything else, rises by 0.8 to 1.06 for each unit of pitch/diameter over all propellers of a type, where blades of
 * true nominal pitch would make it 1.05 to 1.1. `easing` says by how much. Coarse blades untwist under load and are cut
 * finer than their name; which of the two is not known. Blades of their own stations have none of it.
 *
 * Zero-lift angle and drag stand for all else that a generic blade leaves out (its true section, the angle error of a scan).
 * They and the easing were set together by least squares, for each whole type, never for one propeller, so that its mean blade
 * gives what fits in pitch/diameter through all two-blade propellers of the type give (15 thin, 18 slow-flight, 83 sport,
 * 39 folding): thrust and power standing still at 60 m/s tip speed, zero-thrust advance ratio and best efficiency in the
 * tunnel. Lift slope, greatest lift, sharpness and drag of the stall in `section.ts` are one value for all types, but for the
 * steeper lift of slow-flight blades.
 */
export interface BladeType {
  readonly chord: readonly number[];
  readonly pitch: readonly number[];
  readonly easing: Easing;
  readonly section: BladeSection;
  /** Greatest rotation × diameter, rad m/s. Common practice, no source; a maker's own figure goes before it. */
  readonly rotationLimit?: number;
}

/** How blade angles fall behind the stamped pitch as that grows. */
export interface Easing {
  /** rad for each unit of pitch/diameter. */
  readonly rate: number;
  /** The pitch/diameter at which `pitch` holds as it stands: about the mean of those measured. */
  readonly middle: number;
}

export const radii: readonly number[] = [0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1];

const section = (zeroLiftDegrees: number, dragMin: number, dragRise = 0, liftSlope = 5.9): BladeSection =>
  ({ zeroLift: (zeroLiftDegrees * Math.PI) / 180, dragMin, dragRise, liftSlope });
const easing = (degrees: number, middle: number): Easing => ({ rate: (degrees * Math.PI) / 180, middle });
const inchRpm = (value: number): number => (value * 0.0254 * Math.PI) / 30;

const thin: BladeType = {
  chord: [0.149, 0.172, 0.188, 0.201, 0.196, 0.176, 0.147, 0.131, 0.115, 0.099, 0.085, 0.064, 0.043],
  pitch: [0.94, 1.06, 1.06, 1.03, 1.02, 1.02, 1.03, 1.03, 1.04, 1.04, 1.03, 1, 0.96],
  easing: easing(-2.6, 0.68),
  section: section(-3.1, 0.034, 0.05),
  rotationLimit: inchRpm(145_000),
};

/** Mean of the two makes, whose pitch runs differently along the blade. */
const wide: BladeType = {
  chord: [0.124, 0.147, 0.17, 0.206, 0.226, 0.228, 0.213, 0.2, 0.182, 0.161, 0.135, 0.094, 0.052],
  pitch: [0.565, 0.685, 0.78, 0.91, 0.96, 0.975, 0.97, 0.96, 0.945, 0.925, 0.89, 0.845, 0.79],
  easing: easing(-3.6, 0.6),
  section: section(-3.55, 0.0295, 0.05, 7),
  rotationLimit: inchRpm(65_000),
};

const thick: BladeType = {
  chord: [0.159, 0.162, 0.165, 0.168, 0.168, 0.164, 0.154, 0.146, 0.135, 0.122, 0.106, 0.082, 0.057],
  pitch: [0.71, 0.88, 0.96, 1.05, 1.08, 1.09, 1.08, 1.06, 1.04, 1.02, 0.98, 0.9, 0.82],
  easing: easing(-4.1, 0.65),
  section: section(-2.75, 0.0445, 0.02),
  rotationLimit: inchRpm(190_000),
};

/** Thin blades get slimmer with size: chord at three quarters of the radius over that of the table, by diameter in m. */
const slimness: readonly (readonly [diameter: number, chord: number])[] = [
  [0.2286, 1.145], [0.254, 0.977], [0.2794, 0.947], [0.3556, 0.786],
];

/** The type a propeller belongs to. Folding goes before thin or thick: folding blades were measured as a type of their own. */
export function bladeTypeOf(propeller: Pick<Propeller, "family" | "folding" | "diameter">): BladeType {
  if (propeller.family === "wide") return wide;
  if (propeller.folding) return { ...thin, easing: easing(-1.2, 0.6), section: section(-3.3, 0.021), rotationLimit: undefined };
  if (propeller.family === "thick") return thick;
  const share = interpolate(slimness.map(([d]) => d), slimness.map(([, c]) => c), propeller.diameter);
  return { ...thin, chord: thin.chord.map((c) => c * share) };
}

/** Straight lines between points of rising x; beyond the ends the end's value. */
export function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (!(x > xs[0])) return ys[0];
  if (x >= xs[last]) return ys[last];
  let i = 1;
  while (xs[i] < x) i++;
  return ys[i - 1] + ((ys[i] - ys[i - 1]) * (x - xs[i - 1])) / (xs[i] - xs[i - 1]);
}
