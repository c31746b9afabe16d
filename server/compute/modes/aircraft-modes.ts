import type { AirBasis } from "../aircraft/air-basis";
import { pitchRate } from "../derivatives/pitch-rate";
import { sideDerivatives, type Side } from "../derivatives/side";
import type { PitchStability } from "../stability/neutral-point";
import { lateralModes, type LateralModes } from "./lateral";
import { longitudinalModes, type LongitudinalModes } from "./longitudinal";

/** Level flight of one loading: SI, coefficients on the wing's area. */
export interface Flight {
  readonly speed: number;
  readonly density: number;
  readonly mass: number;
  /** The balance point, m. */
  readonly x: number;
  readonly z: number;
  readonly inertia: Inertia;
  readonly lift: number;
  readonly drag: number;
  /** Of the drag coefficient, per radian of angle at the same speed. */
  readonly dragSlope: number;
}

/** About the balance point, kg m²; `product` is ∫xz dm. */
export interface Inertia {
  readonly roll: number;
  readonly pitch: number;
  readonly yaw: number;
  readonly product: number;
}

export interface Modes {
  readonly pitch: LongitudinalModes;
  /** Absent where the lattice of unsymmetrical flow has no solution. */
  readonly side?: LateralModes;
}

/**
 * Motions of small size about level flight with controls fixed and thrust as it is. The lag of the downwash is that of the flight `near`.
 */
export function modesNear(basis: AirBasis, pitch: PitchStability, side: Side | undefined, near: Flight): (flight: Flight) => Modes | undefined {
  const { area, meanChord } = pitch.reference;
  const lag = pitchRate(pitch.lattice, pitch.reference, near.x);
  return (flight) => {
    const { speed, density, mass, x, inertia, lift, drag, dragSlope } = flight;
    const [, angle, , , turn] = basis.modes;
    const arm = x - basis.about;
    // A turn about the balance point is one about `about` and an angle.
    const liftRate = turn.lift - arm * angle.lift;
    const momentRate = turn.moment - arm * angle.moment + arm * liftRate;
    const rate = 2 / meanChord;
    const longitudinal = longitudinalModes({
      speed, density, area, meanChord, mass, pitchInertia: inertia.pitch, lift, drag, dragSlope,
      liftSlope: angle.lift / area, momentSlope: (angle.moment + arm * angle.lift) / (area * meanChord),
      liftRate: (rate * liftRate) / area, momentRate: (rate * momentRate) / (area * meanChord),
      lagLift: lag.lagLift, lagMoment: lag.lagMoment + (lag.lagLift * (x - near.x)) / meanChord,
    });
    if (!longitudinal) return undefined;
    const lateral = side && lateralModes({
      speed, density, area, mass, span: pitch.reference.span, rollInertia: inertia.roll, yawInertia: inertia.yaw, product: inertia.product,
      derivatives: sideDerivatives(side, flight),
    });
    return { pitch: longitudinal, ...(lateral && { side: lateral }) };
  };
}
