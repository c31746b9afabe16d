import type { LateralFlow, LateralLoads, Onset } from "../lattice/lateral-flow";
import type { ReferenceGeometry } from "../planform/reference-geometry";

/** Change of the coefficients of side force (right), rolling (right wing down) and yawing moment (nose right). */
export interface LateralCoefficients {
  readonly side: number;
  readonly roll: number;
  readonly yaw: number;
}

/** Moments about the balance point on area and span. */
export interface LateralDerivatives {
  /** Per radian of sideslip, wind from the right. */
  readonly sideslip: LateralCoefficients;
  /** Per pb/2V, right wing down. */
  readonly rollRate: LateralCoefficients;
  /** Per rb/2V, nose right. */
  readonly yawRate: LateralCoefficients;
}

export interface FlightPoint {
  readonly lift: number;
  /** The balance point, m; it is taken to lie in the plane of symmetry. */
  readonly x: number;
  readonly z: number;
}

/**
 * Sideslip, roll and yaw derivatives of all surfaces at a lift coefficient, from a vortex lattice in the linear onset flow
 * of each motion (definitions as in R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 3).
 */
export function lateralDerivatives(flow: LateralFlow, reference: ReferenceGeometry, { lift, x: cgX, z: cgZ }: FlightPoint): LateralDerivatives {
  const { area, span } = reference;
  const rate = 2 / span;
  const coefficients = (change: Onset): LateralCoefficients => {
    const { side, roll, yaw }: LateralLoads = flow.respond(change, lift * area, { x: cgX, z: cgZ });
    return { side: side / area, roll: roll / (area * span), yaw: yaw / (area * span) };
  };
  return {
    sideslip: coefficients(() => [0, -1, 0]),
    rollRate: coefficients((_, y, z) => [0, -rate * (z - cgZ), rate * y]),
    yawRate: coefficients((x, y) => [-rate * y, rate * (x - cgX), 0]),
  };
}
