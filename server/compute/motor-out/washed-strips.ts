import type { Vec3 } from "../../model/design/geometry";
import type { Powerplant } from "../../model/design/power";
import { along, dot, minus } from "../convex/shapes";
import type { LateralStrip } from "../lattice/lateral-strips";
import { slipstream } from "../propeller/slipstream";
import type { Washed } from "./lateral-air";

export interface Wind {
  /** m/s */
  readonly speed: number;
  /** Of the x axis to the flight, nose up, rad. */
  readonly angle: number;
  readonly density: number;
}

/** Of the air past a hub, the part across its shaft, m/s. */
export function windAcross(axis: Vec3, speed: number, angle: number): Vec3 {
  const wind: Vec3 = [speed * Math.cos(angle), 0, speed * Math.sin(angle)];
  return along(wind, -dot(wind, axis), axis);
}

/** The slipstream where it passes a point. */
export interface Passing {
  /** m */
  readonly radius: number;
  /** Along the shaft, m/s. */
  readonly velocity: number;
  /** From its middle to the point, across the shaft, m. */
  readonly beside: Vec3;
}

/**
 * The slipstream of a pulling propeller: it leaves along the shaft and drifts with the air across it, as wide as momentum has it.
 * Undefined without one; at a point ahead of the disc too.
 */
export function slipstreamOf(
  { hub, thrustAxis: axis, propeller }: Powerplant, load: { readonly thrust: number; readonly torque: number }, { speed, angle, density }: Wind,
): ((point: Vec3) => Passing | undefined) | undefined {
  const ahead = -axis[0] * speed * Math.cos(angle) - axis[2] * speed * Math.sin(angle);
  if (!propeller || !(ahead > 0) || !(load.thrust > 0)) return undefined;
  const across = windAcross(axis, speed, angle);
  return (point) => {
    const from = minus(point, hub);
    const distance = -dot(from, axis);
    if (!(distance > 0)) return undefined;
    const { radius, velocity } = slipstream({ load, diameter: propeller.diameter, speed: ahead, density, distance });
    return { radius, velocity, beside: along(along(from, distance, axis), -distance / velocity, across) };
  };
}

/** Fins and tailplanes behind a propeller, by strips. Sideslip does not move its slipstream, nor does a body in it. */
export function washedStrips(
  strips: readonly LateralStrip[], plant: Powerplant, load: { readonly thrust: number; readonly torque: number }, wind: Wind,
): Washed[] {
  const passing = slipstreamOf(plant, load, wind);
  if (!passing) return [];
  return strips.flatMap(({ kind, x, y, z, length }, strip): Washed[] => {
    const at = kind === "fin" || kind === "tailplane" ? passing([x, y, z]) : undefined;
    if (!at) return [];
    const share = Math.min(1, Math.max(0, 0.5 + (at.radius - Math.sqrt(dot(at.beside, at.beside))) / length));
    const ratio = at.velocity / wind.speed;
    return share > 0 && ratio > 1 ? [{ strip, speed: share * (ratio - 1), pressure: share * (ratio ** 2 - 1) }] : [];
  });
}
