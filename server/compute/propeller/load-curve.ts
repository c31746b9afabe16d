import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf } from "./blade";
import { bladeLoad, type PropellerLoad } from "./propeller-at";
import { staticCoefficients } from "./static-curve";

/** What a propeller does at one airspeed, at any rotation (rad/s, above 0). */
export interface LoadCurve {
  readonly at: (rotation: number) => PropellerLoad;
}

/** At an airspeed along the shaft (m/s). Standing still it is interpolated, moving solved anew for each rotation. */
export function loadCurve(propeller: Propeller, air: Air, speed: number): LoadCurve {
  if (speed === 0) return staticCoefficients(propeller, air);
  const blade = bladeOf(propeller);
  return { at: (rotation) => bladeLoad(blade, rotation, speed, air) };
}
