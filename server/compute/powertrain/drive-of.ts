import type { Controller, Powerplant, Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import type { Missing } from "../battery/source";
import type { PropellerMap } from "../propeller/propeller-map";
import type { Drive } from "./drive";

export type DriveMissing = Missing<
  "fan.measured" | "motor" | "motor.kv" | "motor.resistance" | "motor.gear_ratio" | "propeller" | "propeller.diameter" | "propeller.pitch"
>;

/** What was taken for granted, by the property that would say it. */
export type Assumption = "esc.resistance" | "motor.no_load_current" | "battery.resistance";

/** Where maps of propellers come from. They hold at any airspeed and in any air. */
export type MapOf = (propeller: Propeller) => Pick<PropellerMap, "at">;

/** From pack to controller: common practice, no source (0.3 m there and back of 3 mm² copper, and two plugs). ohm */
const leads = 0.004;

/** A controller not rated: common practice (2 to 10 mohm), no source. */
const unratedController = 0.006;

/** Volts that controllers are built to lose at their rated current: common practice, no source. */
const ratedDrop = 0.4;

/**
 * The drive of a powerplant at an airspeed along its shaft (m/s), or the first thing it lacks. A controller's own
 * `resistance` counts its leads in.
 */
export function driveOf(
  plant: Powerplant, air: Air, mapOf: MapOf, speed = 0,
): { drive: Drive; assumed: Assumption[] } | DriveMissing {
  const { motor, propeller, controller } = plant;
  if (!propeller) return { missing: plant.fan ? "fan.measured" : "propeller" };
  if (!motor) return { missing: "motor" };
  if (!sound(motor.kv)) return { missing: "motor.kv" };
  if (!sound(motor.resistance)) return { missing: "motor.resistance" };
  if (!sound(motor.gearRatio)) return { missing: "motor.gear_ratio" };
  if (!sound(propeller.diameter)) return { missing: "propeller.diameter" };
  if (!Number.isFinite(propeller.pitch)) return { missing: "propeller.pitch" };
  const noLoadCurrent = sound(motor.noLoadCurrent) ? motor.noLoadCurrent : 0;
  const map = mapOf(propeller);
  const assumed: Assumption[] = [];
  if (noLoadCurrent === 0) assumed.push("motor.no_load_current");
  if (controller?.resistance === undefined) assumed.push("esc.resistance");
  return {
    drive: {
      motor: { kv: motor.kv, resistance: motor.resistance, noLoadCurrent },
      gearRatio: motor.gearRatio,
      load: (rotation) => map.at({ rotation, speed, air }),
      controllerResistance: controllerResistance(controller),
      leadResistance: controller?.resistance === undefined ? leads : 0,
    },
    assumed,
  };
}

const sound = (value: number): boolean => value > 0 && Number.isFinite(value);

function controllerResistance(controller: Controller | undefined): number {
  if (controller?.resistance !== undefined) return controller.resistance;
  if (!controller?.maxCurrent) return unratedController;
  return Math.min(0.01, Math.max(0.002, ratedDrop / controller.maxCurrent));
}
