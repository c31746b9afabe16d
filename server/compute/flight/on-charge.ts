import type { Aeroplane } from "./aeroplane";
import { bestEndurance, bestRange, levelPower } from "./level";
import { drain, type Store } from "../battery/store";

/** A store and the share it gives of all the power; the shares sum to 1. */
export interface Fed {
  readonly store: Store;
  readonly share: number;
}

export interface Carriage {
  /** Receiver, servos, payload, W. */
  readonly others?: number;
  /** Share of the usable charge kept back for the landing. */
  readonly reserve?: number;
  /** m/s */
  readonly headWind?: number;
}

export interface OnCharge {
  readonly speed: number;
  /** From the packs, W. */
  readonly power: number;
  /** s */
  readonly time: number;
  /** Over the ground, m. */
  readonly distance: number;
  /** The best speed lies below the stall or beyond what was searched: this is the best that can be flown. */
  readonly end?: "low" | "high";
  /** A store can't give the power to its end: time until then. */
  readonly weak?: true;
}

/** Level flight at a speed on the usable charge, from full, less the reserve; it ends with the first store that does. */
export function levelOnCharge(aeroplane: Aeroplane, speed: number, fed: readonly Fed[], carriage: Carriage = {}): OnCharge | undefined {
  const { others = 0, reserve = 0, headWind = 0 } = carriage;
  const power = levelPower(aeroplane, speed, others);
  const drains = fed.filter(({ share }) => share > 0)
    .map(({ store, share }) => drain(store, share * (power ?? NaN), Infinity, 1, 1 - store.usable * (1 - reserve)));
  if (power === undefined || !(power > 0) || drains.length === 0) return undefined;
  const first = drains.reduce((a, b) => (b.time < a.time ? b : a));
  return { speed, power, time: first.time, distance: first.time * (speed - headWind), ...(first.ended === "power" && { weak: true as const }) };
}

/** The longest flight, at the speed of least power from the packs. */
export function longestFlight(aeroplane: Aeroplane, fed: readonly Fed[], carriage: Carriage = {}): OnCharge | undefined {
  const best = bestEndurance(aeroplane, carriage.others);
  const flight = best && levelOnCharge(aeroplane, best.at, fed, carriage);
  return flight && { ...flight, ...(best.end && { end: best.end }) };
}

/** The farthest flight, at the speed of least power over ground speed. */
export function farthestFlight(aeroplane: Aeroplane, fed: readonly Fed[], carriage: Carriage = {}): OnCharge | undefined {
  const best = bestRange(aeroplane, carriage.others, carriage.headWind);
  const flight = best && levelOnCharge(aeroplane, best.at, fed, carriage);
  return flight && { ...flight, ...(best.end && { end: best.end }) };
}
