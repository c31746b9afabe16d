import type { Powerplant, Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { smoothCurve } from "../curve";
import type { PropellerMap } from "../propeller/propeller-map";
import { deadPropellerDrag } from "./stopped-propeller";

export interface DeadPropeller {
  readonly path: string;
  /** Drag over dynamic pressure of the flight, m², over speed. */
  readonly area: (speed: number) => number;
  /** How it stands at the nearest speed worked out. */
  readonly how: (speed: number) => string;
}

export interface DeadPropellersCase {
  readonly powerplants: readonly Powerplant[];
  readonly air: Air;
  readonly mapOf: (propeller: Propeller) => PropellerMap;
  /** Slowest and fastest speed asked for, m/s. */
  readonly speeds: readonly [low: number, high: number];
}

/** Smooth between them, but for where a propeller starts to turn. */
const places = 16;

/** Drag of each propeller with all motors off, over speed. */
export function deadPropellers({ powerplants, air, mapOf, speeds: [low, high] }: DeadPropellersCase): DeadPropeller[] {
  const speeds = Array.from({ length: places }, (_, i) => low * (high / low) ** (i / (places - 1)));
  const nearest = (speed: number) => Math.min(places - 1, Math.max(0, Math.round(((places - 1) * Math.log(speed / low)) / Math.log(high / low))));
  return powerplants.map((plant) => {
    const map = plant.propeller && mapOf(plant.propeller);
    const dead = speeds.map((speed) => deadPropellerDrag(plant, { speed: Math.max(0, -plant.thrustAxis[0] * speed), air, map }));
    return { path: plant.path, area: smoothCurve(speeds, dead.map(({ area }) => area)), how: (speed) => dead[nearest(speed)].how };
  });
}
