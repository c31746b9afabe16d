import { pitchRate } from "../derivatives/pitch-rate";
import type { LateralDerivatives } from "../derivatives/lateral";
import type { PitchStability } from "../stability/neutral-point";
import { lateralModes, type LateralModes } from "./lateral";
import { longitudinalModes, type LongitudinalModes } from "./longitudinal";

/** Level flight of one loading: SI, coefficients on the wing's area. */
export interface LevelFlight {
  readonly speed: number;
  readonly density: number;
  readonly mass: number;
  /** The balance point's x, m. */
  readonly x: number;
  readonly inertia: { readonly roll: number; readonly pitch: number; readonly yaw: number; readonly product: number };
  readonly lift: number;
  readonly drag: number;
  /** Of the drag coefficient, per radian of angle at the same speed. */
  readonly dragSlope: number;
}

/** Short period and phugoid of the whole aircraft in level flight, controls fixed and thrust as it is. */
export function pitchModes(pitch: PitchStability, flight: LevelFlight): LongitudinalModes | undefined {
  const { area, meanChord, meanChordX } = pitch.reference;
  const rates = pitchRate(pitch.lattice, pitch.reference, flight.x);
  return longitudinalModes({
    speed: flight.speed, density: flight.density, area, meanChord, mass: flight.mass, pitchInertia: flight.inertia.pitch,
    lift: flight.lift, drag: flight.drag, dragSlope: flight.dragSlope, liftSlope: pitch.liftSlope,
    momentSlope: pitch.momentSlope + (pitch.liftSlope * (flight.x - meanChordX - meanChord / 4)) / meanChord,
    liftRate: rates.lift, momentRate: rates.moment, lagLift: rates.lagLift, lagMoment: rates.lagMoment,
  });
}

/** Roll, Dutch roll and spiral, from the derivatives at that lift and balance point. */
export function sideModes({ reference: { area, span } }: PitchStability, derivatives: LateralDerivatives, flight: LevelFlight): LateralModes | undefined {
  const { roll, yaw, product } = flight.inertia;
  return lateralModes({
    speed: flight.speed, density: flight.density, area, span, mass: flight.mass, rollInertia: roll, yawInertia: yaw, product, derivatives,
  });
}
