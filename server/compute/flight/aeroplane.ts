import { standardGravity } from "../constants";

/**
 * What flight mechanics asks of an aircraft in one loading and one air. Speeds are true airspeeds. Anything may be unknown at some
 * speeds: what rests on it is then undefined. The functions are asked at the same speeds again and again: a caller for whom they are
 * dear remembers them. Thrust acts along the flight path; its part in the lift is not modelled.
 */
export interface Aeroplane {
  /** kg */
  readonly mass: number;
  /** kg/m³ */
  readonly density: number;
  /** Slowest level flight, m/s. */
  readonly stallSpeed: number;
  /** N, at a speed and a lift of `loadFactor` (1 when absent) times the weight; without idle propellers. */
  readonly drag: (speed: number, loadFactor?: number) => number | undefined;
  /** Forward, of all powerplants at full throttle, N; absent without a motor. */
  readonly thrust?: (speed: number) => number | undefined;
  /** What the packs give for a thrust at a speed, W. */
  readonly electricPower?: (thrust: number, speed: number) => number | undefined;
  /** Of propellers whose motors are off, N; none when absent. */
  readonly idleDrag?: (speed: number) => number | undefined;
  /** Slowest and fastest speed searched for what is best, m/s; the stall, and ten times it, when absent. */
  readonly searched?: readonly [number, number];
}

export const weightOf = ({ mass }: Pick<Aeroplane, "mass">): number => mass * standardGravity;

/** Slowest and fastest speed searched. */
export const speedsOf = ({ stallSpeed, searched }: Aeroplane): readonly [number, number] => searched ?? [stallSpeed, 10 * stallSpeed];

/** Most lift over weight at a speed, before the stall. */
export const liftLimit = ({ stallSpeed }: Pick<Aeroplane, "stallSpeed">, speed: number): number => (speed / stallSpeed) ** 2;
