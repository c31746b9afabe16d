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

/**
 * Fins and tailplanes behind a propeller, by strips. Its slipstream leaves along the shaft and drifts with the air across it; it is
 * as wide as momentum has it there. Sideslip does not move it, nor does a body in it.
 */
export function washedStrips(
  strips: readonly LateralStrip[], { hub, thrustAxis: axis, propeller }: Powerplant, load: { readonly thrust: number; readonly torque: number },
  { speed, angle, density }: Wind,
): Washed[] {
  const ahead = -axis[0] * speed * Math.cos(angle) - axis[2] * speed * Math.sin(angle);
  if (!propeller || !(ahead > 0) || !(load.thrust > 0)) return [];
  const across = windAcross(axis, speed, angle);
  return strips.flatMap(({ kind, x, y, z, length }, strip): Washed[] => {
    if (kind !== "fin" && kind !== "tailplane") return [];
    const from = minus([x, y, z], hub);
    const distance = -dot(from, axis);
    if (!(distance > 0)) return [];
    const { radius, velocity } = slipstream({ load, diameter: propeller.diameter, speed: ahead, density, distance });
    const beside = along(along(from, distance, axis), -distance / velocity, across);
    const share = Math.min(1, Math.max(0, 0.5 + (radius - Math.sqrt(dot(beside, beside))) / length));
    const ratio = velocity / speed;
    return share > 0 && ratio > 1 ? [{ strip, speed: share * (ratio - 1), pressure: share * (ratio ** 2 - 1) }] : [];
  });
}
