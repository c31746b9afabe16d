import { standardGravity } from "../constants";
import { eigenvalues, type Complex } from "./eigenvalues";
import { oscillation, type Oscillation } from "./motion";

/** Level flight, x along it, thrust through the balance point. Any one system of units. */
export interface LongitudinalFlight {
  readonly speed: number;
  /** Of the air. */
  readonly density: number;
  readonly gravity?: number;
  readonly area: number;
  readonly meanChord: number;
  readonly mass: number;
  readonly pitchInertia: number;
  readonly lift: number;
  readonly drag: number;
  /** Per radian; the moment about the balance point. */
  readonly liftSlope: number;
  readonly dragSlope: number;
  readonly momentSlope: number;
  /** Per qc̄/2V. */
  readonly liftRate: number;
  readonly momentRate: number;
  /** Per α̇c̄/2V. */
  readonly lagLift: number;
  readonly lagMoment: number;
  /** Change of thrust over dynamic pressure and area per relative change of speed; 0 is a thrust that stays. */
  readonly thrustChange?: number;
}

/** One in the faster, one in the slower pair of eigenvalues; absent where a pair is none that swings or creeps back. */
export interface LongitudinalModes {
  readonly shortPeriod?: Oscillation;
  readonly phugoid?: Oscillation;
  /** By size, 1/s. */
  readonly roots: readonly Complex[];
}

/** Rows for speed along and down, pitch rate, pitch angle (R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 4). */
export function longitudinalMatrix(f: LongitudinalFlight): number[][] {
  const { speed: v, area, meanChord: c, mass, gravity = standardGravity } = f;
  const push = (f.density * v * area) / (2 * mass);
  const turn = (f.density * v * area * c) / (2 * f.pitchInertia);
  const lag = c / (2 * v);
  const down = [-2 * f.lift * push, -(f.liftSlope + f.drag) * push, v - f.liftRate * lag * v * push, 0]
    .map((value) => value / (1 + f.lagLift * lag * push));
  const nose = [0, f.momentSlope * turn, f.momentRate * lag * v * turn, 0].map((value, i) => value + f.lagMoment * lag * turn * down[i]);
  return [
    [(-2 * f.drag + (f.thrustChange ?? 0)) * push, (f.lift - f.dragSlope) * push, 0, -gravity],
    down,
    nose,
    [0, 0, 1, 0],
  ];
}

/** Short period and phugoid with controls fixed; undefined if an input isn't finite. */
export function longitudinalModes(flight: LongitudinalFlight): LongitudinalModes | undefined {
  return longitudinalModesOf(longitudinalMatrix(flight));
}

export function longitudinalModesOf(matrix: readonly (readonly number[])[]): LongitudinalModes | undefined {
  const roots = eigenvalues(matrix);
  if (!roots) return undefined;
  const [fast, slow] = inPairs(roots);
  const [shortPeriod, phugoid] = [oscillation(...fast), oscillation(...slow)];
  return { roots, ...(shortPeriod && { shortPeriod }), ...(phugoid && { phugoid }) };
}

/** Two and two by size, except that a conjugate pair stays together. */
function inPairs([a, b, c, d]: readonly Complex[]): [[Complex, Complex], [Complex, Complex]] {
  return b.im !== 0 && a.im === 0 ? [[b, c], [a, d]] : [[a, b], [c, d]];
}
