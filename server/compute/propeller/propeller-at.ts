import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf, type Blade } from "./blade";
import { elementLoad, type ElementLoad } from "./element-load";
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
  return propellerLoad(ringLoads(blade, { rotation, speed, air }), { diameter: blade.diameter, rotation, speed, air });
}

/** Thrust (N) and torque (N m) of all rings together. */
export function ringLoads(
  blade: Blade, { rotation, speed, air }: { readonly rotation: number; readonly speed: number; readonly air: Pick<Air, "density" | "viscosity"> },
): ElementLoad {
  let [thrust, torque] = [0, 0];
  for (const element of blade.elements) {
    const load = elementLoad(blade, element, rotation, speed, air);
    thrust += load.thrust;
    torque += load.torque;
  }
  return { thrust, torque };
}

/** All that is told of a load, from its thrust (N) and torque (N m). */
export function propellerLoad(
  { thrust, torque }: ElementLoad,
  { diameter, rotation, speed, air }: { readonly diameter: number; readonly rotation: number; readonly speed: number; readonly air: Air },
): PropellerLoad {
  const turns = rotation / (2 * Math.PI);
  const power = torque * rotation;
  const tipSpeed = Math.PI * turns * diameter;
  const area = (Math.PI * diameter ** 2) / 4;
  return {
    thrust, torque, power, tipSpeed,
    thrustCoefficient: thrust / (air.density * turns ** 2 * diameter ** 4),
    powerCoefficient: power / (air.density * turns ** 3 * diameter ** 5),
    advanceRatio: speed / (turns * diameter),
    tipMach: Math.hypot(tipSpeed, speed) / air.speedOfSound,
    efficiency: thrust > 0 && power > 0 ? (thrust * speed) / power : 0,
    figureOfMerit: thrust > 0 && power > 0 ? idealStaticPower(thrust, area, air.density) / power : 0,
  };
}

/** The same from its two coefficients. */
export function coefficientLoad(
  thrustCoefficient: number, powerCoefficient: number, at: { readonly diameter: number; readonly rotation: number; readonly speed: number; readonly air: Air },
): PropellerLoad {
  const turns = at.rotation / (2 * Math.PI);
  const pressure = at.air.density * turns ** 2 * at.diameter ** 4;
  return propellerLoad({ thrust: thrustCoefficient * pressure, torque: (powerCoefficient * pressure * at.diameter) / (2 * Math.PI) }, at);
}
