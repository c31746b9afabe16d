import type { PropellerLoad } from "./propeller-at";

export interface SlipstreamCase {
  readonly load: Pick<PropellerLoad, "thrust" | "torque">;
  /** m */
  readonly diameter: number;
  /** Along the shaft, m/s. */
  readonly speed: number;
  readonly density: number;
  /** Behind the disc, m; 0 in it. */
  readonly distance: number;
}

export interface Slipstream {
  /** m */
  readonly radius: number;
  /** Along the shaft, m/s. */
  readonly velocity: number;
  /** `velocity` over the airspeed; undefined standing still. */
  readonly velocityRatio?: number;
  /** By how much the air turns with the blades at three quarters of `radius`: its angle to the shaft, rad. */
  readonly swirl: number;
}

/**
 * The air behind a propeller by momentum: speeded up by half at the disc and wholly far behind, between them as a cylinder of
 * vortex rings does on its axis, v (1 + x/√(x² + R²)) (B. W. McCormick, Aerodynamics of V/STOL Flight, 1967; from memory); as
 * narrow as what flows through it needs; turning like a solid body that carries the shaft's torque. All of it a mean over the
 * disc. A propeller that brakes slows the air, at most to nothing far behind: past that momentum says no more. Not modelled:
 * mixing with the air around, walls and wings in it.
 */
export function slipstream({ load, diameter, speed, density, distance }: SlipstreamCase): Slipstream {
  const tip = diameter / 2;
  const area = Math.PI * tip ** 2;
  const far = Math.sqrt(Math.max(0, speed ** 2 + (2 * load.thrust) / (density * area)));
  const induced = (far - speed) / 2;
  const behind = Math.max(0, distance);
  const velocity = speed + induced * (1 + behind / Math.sqrt(behind * behind + tip * tip));
  const flux = density * area * (speed + induced);
  const radius = velocity > 0 ? Math.sqrt(flux / (density * Math.PI * velocity)) : tip;
  // Torque = flux × turning × radius²/2, wherever it is looked at.
  const around = flux > 0 ? (0.75 * 2 * load.torque) / (flux * radius) : 0;
  return {
    radius, velocity,
    ...(speed > 0 && { velocityRatio: velocity / speed }),
    swirl: Math.atan2(around, velocity),
  };
}
