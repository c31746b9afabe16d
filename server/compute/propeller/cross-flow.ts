import type { Vec3 } from "../../model/design/geometry";
import type { Air } from "../atmosphere/atmosphere";
import { along, dot } from "../convex/shapes";
import type { Blade } from "./blade";
import { elementLoad } from "./element-load";
import type { PropellerLoad } from "./propeller-at";
import type { PropellerMap } from "./propeller-map";

/** What air moving across the shaft does, for each m/s of it: a force along it, N, and a moment about its direction, N m. */
export interface CrossSlopes {
  readonly force: number;
  readonly moment: number;
}

/** Of the rotation: a change small enough for a slope, large enough for the solver. */
const hair = 1e-3;

/**
 * Blade elements around the disc: where a blade moves against the cross-flow it meets more air, where it moves with it less,
 * by the sine of its azimuth. To first order the mean around the disc of what that does is half of what a change of the
 * tangential speed does to each ring. Each part of a ring moves its own air: in axial flow that is what the gains of D. M.
 * Pitt and D. A. Peters (Vertica 5, 1981; from memory) come to. What the blades do to the air sideways is left out.
 */
export function crossSlopes(
  blade: Blade, { rotation, speed, air }: { readonly rotation: number; readonly speed: number; readonly air: Pick<Air, "density" | "viscosity"> },
): CrossSlopes {
  let [force, moment] = [0, 0];
  // A ring that hardly turns still meets the air: the change is of the whole flow.
  const change = hair * Math.hypot(rotation, (2 * speed) / blade.diameter);
  for (const element of blade.elements) {
    const [less, more] = [rotation - change, rotation + change].map((turning) => elementLoad(blade, element, turning, speed, air));
    force += (more.torque - less.torque) / (4 * change * element.radius ** 2);
    moment += (more.thrust - less.thrust) / (4 * change);
  }
  return { force, moment };
}

export interface InclinedFlow {
  readonly map: PropellerMap;
  /** Unit vector along which it pulls. */
  readonly axis: Vec3;
  /** Seen from behind. */
  readonly clockwise: boolean;
  /** Of the air past the hub, m/s: (V, 0, 0) straight from ahead. */
  readonly wind: Vec3;
  /** rad/s, above 0. */
  readonly rotation: number;
  readonly air: Air;
}

export interface InclinedLoad {
  readonly load: PropellerLoad;
  /** All forces of the air on the propeller, N: thrust along the shaft, and along the air that crosses it. */
  readonly force: Vec3;
  /** About the hub, N m: torque, and the moment of the blade that meets more air. */
  readonly moment: Vec3;
}

/**
 * A propeller in air at an angle to its shaft, to first order in that angle. Climbing, the descending blade takes the bigger
 * bite: turning clockwise it pulls the nose to the left, and the disc is drawn upward. A propeller that blows forward meets still air.
 */
export function inclinedLoad({ map, axis, clockwise, wind, rotation, air }: InclinedFlow): InclinedLoad {
  const ahead = -dot(wind, axis);
  const flow = { rotation, speed: Math.max(0, ahead), air };
  const across = along(wind, ahead, axis);
  const load = map.at(flow);
  const slopes = map.cross(flow);
  const sense = clockwise ? 1 : -1;
  return {
    load,
    force: along(scaled(axis, load.thrust), slopes.force, across),
    moment: along(scaled(axis, -sense * load.torque), sense * slopes.moment, across),
  };
}

const scaled = (v: Vec3, s: number): Vec3 => [s * v[0], s * v[1], s * v[2]];
