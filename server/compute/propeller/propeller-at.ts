import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf, type Blade } from "./blade";
import { elementLoad } from "./element-load";
import { idealStaticPower } from "./momentum";

export interface PropellerState {
  readonly propeller: Propeller;
  /** rad/s, above 0. */
  readonly rotation: number;
  /** Along the shaft, m/s; 0 standing still. */
  readonly speed: number;
  readonly air: Air;
}

export interface PropellerLoad {
  /** Along the shaft, N. */
  readonly thrust: number;
  /** N m */
  readonly torque: number;
  /** At the shaft, W. */
  readonly power: number;
  /** T/(ρ n² D⁴), n in turns a second. */
  readonly thrustCoefficient: number;
  /** P/(ρ n³ D⁵) */
  readonly powerCoefficient: number;
  /** V/(n D) */
  readonly advanceRatio: number;
  /** π n D, m/s. */
  readonly tipSpeed: number;
  /** Of the helical tip speed. */
  readonly tipMach: number;
  /** Thrust × speed over shaft power; 0 standing still, and where it brakes or windmills. */
  readonly efficiency: number;
  /** Least power for the thrust, standing still in the same air, over shaft power; 0 without thrust. */
  readonly figureOfMerit: number;
}

/**
 * Thrust, torque and power of a propeller by blade elements and momentum. Held to the tunnel tests of the UIUC Propeller
 * Database; by type and nominal size alone thrust standing still is within 20 % and power within 25 % for four in five.
 * Not modelled: compressibility, twist under load, the body behind or ahead, the turbulent wake of a braking disc.
 */
export function propellerAt({ propeller, rotation, speed, air }: PropellerState): PropellerLoad {
  return bladeLoad(bladeOf(propeller), rotation, speed, air);
}

/** `propellerAt` for a blade already cut into elements. */
export function bladeLoad(blade: Blade, rotation: number, speed: number, air: Air): PropellerLoad {
  let [thrust, torque] = [0, 0];
  for (const element of blade.elements) {
    const load = elementLoad(blade, element, rotation, speed, air);
    thrust += load.thrust;
    torque += load.torque;
  }
  const turns = rotation / (2 * Math.PI);
  const diameter = blade.diameter;
  return propellerLoad(thrust / (air.density * turns ** 2 * diameter ** 4), (2 * Math.PI * torque) / (air.density * turns ** 2 * diameter ** 5),
    { diameter, rotation, speed, air });
}

/** All of a load from its two coefficients. */
export function propellerLoad(
  thrustCoefficient: number, powerCoefficient: number,
  { diameter, rotation, speed, air }: { readonly diameter: number; readonly rotation: number; readonly speed: number; readonly air: Air },
): PropellerLoad {
  const turns = rotation / (2 * Math.PI);
  const thrust = thrustCoefficient * air.density * turns ** 2 * diameter ** 4;
  const power = powerCoefficient * air.density * turns ** 3 * diameter ** 5;
  const tipSpeed = Math.PI * turns * diameter;
  const area = (Math.PI * diameter ** 2) / 4;
  return {
    thrust, power, thrustCoefficient, powerCoefficient, tipSpeed,
    torque: power / rotation,
    advanceRatio: speed / (turns * diameter),
    tipMach: Math.hypot(tipSpeed, speed) / air.speedOfSound,
    efficiency: thrust > 0 && power > 0 ? (thrust * speed) / power : 0,
    figureOfMerit: thrust > 0 && power > 0 ? idealStaticPower(thrust, area, air.density) / power : 0,
  };
}
