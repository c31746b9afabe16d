import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf } from "../propeller/blade";
import { elementLoad } from "../propeller/element-load";

export interface InclinedPropeller {
  readonly propeller: Propeller;
  /** rad/s */
  readonly rotation: number;
  /** m/s */
  readonly speed: number;
  /** Between shaft and flight, nose up, rad. */
  readonly angle: number;
  readonly air: Air;
}

/** What a propeller gives that meets the air at an angle. */
export interface InclinedLoad {
  /** N */
  readonly thrust: number;
  /** How far to the side of the blades that go down the middle of the thrust lies, m; undefined without thrust. */
  readonly bladeOffset: number | undefined;
  /** In the disc, up, N. */
  readonly normalForce: number;
}

/** Change of rotation over which a slope is taken, as a share. */
const nudge = 1e-3;

/**
 * To first order in the part V sin α of the speed that lies in the disc: a blade at an angle ψ from its top meets it on top of its own
 * speed, as if its element turned faster by V sin α sin ψ/r. Round the disc half of that is left: a moment ½ V sin α dT/dΩ, which moves
 * the thrust to the blades that go down, and a force ½ V sin α Σ(dQ/dΩ)/r² up. By blade elements, each part of the disc's air settled at
 * once; own derivation, not held to a measurement. Not modelled: the upwash or downwash of a wing near by, blades that bend or cone.
 */
export function inclinedPropeller({ propeller, rotation, speed, angle, air }: InclinedPropeller): InclinedLoad {
  const blade = bladeOf(propeller);
  const [axial, across] = [speed * Math.cos(angle), speed * Math.sin(angle)];
  const step = nudge * rotation;
  let [thrust, moment, normalForce] = [0, 0, 0];
  for (const element of blade.elements) {
    const [slower, faster] = [rotation - step, rotation + step].map((turning) => elementLoad(blade, element, turning, axial, air));
    thrust += elementLoad(blade, element, rotation, axial, air).thrust;
    moment += (across / 2) * ((faster.thrust - slower.thrust) / (2 * step));
    normalForce += (across / 2) * ((faster.torque - slower.torque) / (2 * step)) / element.radius ** 2;
  }
  return { thrust, normalForce, bladeOffset: thrust > 0 ? moment / thrust : undefined };
}
