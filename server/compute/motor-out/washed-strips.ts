import type { Vec3 } from "../../model/design/geometry";
import type { Powerplant } from "../../model/design/power";
import { along, dot } from "../convex/shapes";
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
  /** From its middle to the point, across the shaft, m; and how far that is. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly distance: number;
}

/**
 * The slipstream of a pulling propeller: it leaves along the shaft and drifts with the air across it, as wide as momentum has it.
 * Undefined without one; at a point ahead of the disc too. Asked for at every strip and speed: no vectors here.
 */
export function slipstreamOf(
  { hub, thrustAxis: [ax, ay, az], propeller }: Powerplant, load: { readonly thrust: number; readonly torque: number }, { speed, angle, density }: Wind,
): ((x: number, y: number, z: number) => Passing | undefined) | undefined {
  const ahead = -ax * speed * Math.cos(angle) - az * speed * Math.sin(angle);
  if (!propeller || !(ahead > 0) || !(load.thrust > 0)) return undefined;
  const [cx, cy, cz] = windAcross([ax, ay, az], speed, angle);
  return (px, py, pz) => {
    const [fx, fy, fz] = [px - hub[0], py - hub[1], pz - hub[2]];
    const behind = -(fx * ax + fy * ay + fz * az);
    if (!(behind > 0)) return undefined;
    const { radius, velocity } = slipstream({ load, diameter: propeller.diameter, speed: ahead, density, distance: behind });
    const drift = behind / velocity;
    const [x, y, z] = [fx + behind * ax - drift * cx, fy + behind * ay - drift * cy, fz + behind * az - drift * cz];
    return { radius, velocity, x, y, z, distance: Math.sqrt(x * x + y * y + z * z) };
  };
}

/** Does a slipstream reach these? Wings are left out. */
export const stands = ({ kind }: LateralStrip): boolean => kind === "fin" || kind === "tailplane";

/** Fins and tailplanes behind a propeller, by strips. Sideslip does not move its slipstream, nor does a body in it. */
export function washedStrips(
  strips: readonly LateralStrip[], plant: Powerplant, load: { readonly thrust: number; readonly torque: number }, wind: Wind,
): Washed[] {
  const passing = slipstreamOf(plant, load, wind);
  if (!passing) return [];
  return strips.flatMap((one, strip): Washed[] => {
    const at = stands(one) ? passing(one.x, one.y, one.z) : undefined;
    if (!at) return [];
    const share = Math.min(1, Math.max(0, 0.5 + (at.radius - at.distance) / one.length));
    const ratio = at.velocity / wind.speed;
    return share > 0 && ratio > 1 ? [{ strip, speed: share * (ratio - 1), pressure: share * (ratio ** 2 - 1) }] : [];
  });
}
