import type { Air } from "../atmosphere/atmosphere";
import { bracketedRoot } from "../root";
import type { Blade } from "./blade";
import { bladeLoad } from "./propeller-at";

/** Steps of advance ratio in which the end of the thrust is looked for, and how far: beyond the coarsest blade. */
const step = 0.1;
const farthest = 20;

/**
 * The advance ratio from which a propeller no longer pulls, at a rotation (rad/s). Undefined where it doesn't pull standing
 * still, or never stops.
 */
export function zeroThrustAdvance(blade: Blade, rotation: number, air: Air): number | undefined {
  const thrust = (advance: number) => bladeLoad(blade, rotation, speedAt(blade, rotation, advance), air).thrustCoefficient;
  if (!(thrust(0) > 0)) return undefined;
  for (let low = 0; low < farthest; low += step) {
    if (thrust(low + step) <= 0) return bracketedRoot(thrust, low, low + step, 1e-7);
  }
  return undefined;
}

/** Airspeed (m/s) of an advance ratio. */
export const speedAt = ({ diameter }: Blade, rotation: number, advance: number): number =>
  (advance * rotation * diameter) / (2 * Math.PI);
