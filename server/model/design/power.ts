import type { Vec3 } from "./geometry";

export type Chemistry = "lipo" | "lihv" | "liion" | "life" | "nimh";

/** One pack, whole, as on its label. */
export interface Pack<N = number> {
  readonly path: string;
  readonly cells: number;
  readonly parallel: number;
  readonly chemistry: Chemistry;
  /** C (ampere seconds). */
  readonly capacity: N;
  /** The printed C rating, per hour of capacity. */
  readonly cRating?: N;
  /** Of the whole pack, ohm. Default by chemistry and capacity. */
  readonly resistance?: N;
  /** Share of the capacity a flight may use. */
  readonly usable: N;
}

/** What a powerplant is fed from: one pack, or several wired together. */
export interface Source<N = number> {
  readonly path: string;
  readonly wired: "single" | "series" | "parallel";
  readonly packs: readonly Pack<N>[];
}

export interface Motor<N = number> {
  /** rad/s per volt. */
  readonly kv: N;
  readonly resistance: N;
  readonly noLoadCurrent: N;
  readonly noLoadVoltage?: N;
  readonly maxCurrent?: N;
  readonly burstCurrent?: N;
  readonly maxPower?: N;
  /** Motor turns per propeller turn. */
  readonly gearRatio: N;
}

export type BladeFamily = "thin" | "wide" | "thick";

/** A blade section: share of the radius, chord over radius, angle to the disc in radians. */
export interface BladeStation<N = number> {
  readonly radius: N;
  readonly chord: N;
  readonly angle: N;
}

/** What a propeller was measured to do: rad/s, m/s along the shaft, N, W at the shaft, kg/m³. */
export interface MeasuredLoad {
  readonly rotation: number;
  readonly speed: number;
  readonly thrust: number;
  readonly power: number;
  readonly density: number;
}

export interface Propeller<N = number> {
  readonly diameter: N;
  readonly pitch: N;
  readonly blades: number;
  readonly family: BladeFamily;
  readonly folding: boolean;
  readonly stations?: readonly BladeStation<N>[];
  /** Seen from behind. */
  readonly clockwise: boolean;
  /** Goes before what is computed. */
  readonly measured?: readonly MeasuredLoad[];
  /** Greatest rotation the maker allows, rad/s. */
  readonly maxRotation?: N;
}

export interface Controller<N = number> {
  readonly path: string;
  readonly maxCurrent?: N;
  readonly burstCurrent?: N;
  readonly resistance?: N;
}

/** One run of a powerplant on the stand, as far as it was measured. */
export interface Bench<N = number> {
  /** `nose.full`. */
  readonly path: string;
  /** Path of the powerplant. */
  readonly plant: string;
  /** 0 to 1. */
  readonly throttle: N;
  /** At the controller. */
  readonly volts?: N;
  /** Into the controller. */
  readonly amps?: N;
  /** Of the propeller, rad/s. */
  readonly rotation?: N;
  readonly thrust?: N;
  /** Is the powerplant to be computed as this run shows it to be? */
  readonly calibrate: boolean;
}

export interface Powerplant<N = number> {
  /** `nose`, `pods.right.drive`. */
  readonly path: string;
  readonly hub: Vec3<N>;
  /** Unit vector the thrust points along: (−1, 0, 0) for a shaft straight ahead. */
  readonly thrustAxis: Vec3<N>;
  readonly pusher: boolean;
  /** Path of its source in `Design.sources`. */
  readonly source?: string;
  readonly motor?: Motor<N>;
  readonly propeller?: Propeller<N>;
  readonly controller?: Controller<N>;
  /** A ducted fan: its diameter; not computed yet. */
  readonly fan?: { readonly diameter: N };
}
