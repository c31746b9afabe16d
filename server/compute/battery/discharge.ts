import type { Source } from "../../model/design/power";
import { currentFor, storeOf } from "../flight/store";
import type { SourceMissing } from "./source";

/** What is taken: a steady power at the terminals, W, or a steady current, A. Above 0. */
export type Draw = { readonly power: number } | { readonly current: number };

export interface DischargeCase {
  readonly source: Source;
  readonly draw: Draw;
  /** Share of the capacity it begins with; 1 when absent. */
  readonly from?: number;
  /** Share it ends with; what the packs say is not usable when absent. */
  readonly to?: number;
}

export interface DischargePoint {
  /** s from the beginning. */
  readonly time: number;
  /** Share of the capacity left. */
  readonly charge: number;
  readonly current: number;
  /** V at the terminals. */
  readonly volts: number;
}

export interface Discharge {
  readonly points: readonly DischargePoint[];
  /** s */
  readonly time: number;
  /** A s */
  readonly taken: number;
  /** J given at the terminals, and lost inside. */
  readonly energy: number;
  readonly heat: number;
  /** The packs could not give the power to the end. */
  readonly weak?: true;
}

const steps = 200;

/**
 * A source emptied at a steady power or current: time, charge, current and volts along it, by the midpoint rule over the charge. The
 * resting voltage follows the chemistry's table; resistance stays that of a new pack at room temperature. Charge counts in full
 * however fast it is taken: for lithium cells a few per cent too much (see `peukertTime`).
 */
export function discharge({ source, draw, from = 1, to }: DischargeCase): Discharge | SourceMissing {
  const store = storeOf(source);
  if ("missing" in store) return store;
  const { capacity, resistance, emf } = store;
  const end = to ?? 1 - store.usable;
  const share = Math.max(0, from - end) / steps;
  const currentAt = (charge: number) => ("current" in draw ? draw.current : currentFor(emf(charge), resistance, draw.power));
  const points: DischargePoint[] = [];
  let [time, energy, heat, taken] = [0, 0, 0, 0];
  let charge = from;
  const mark = () => {
    const current = currentAt(charge);
    if (current !== undefined) points.push({ time, charge, current, volts: emf(charge) - resistance * current });
  };
  mark();
  for (let i = 0; i < steps && share > 0; i++) {
    const rest = emf(charge - share / 2);
    const current = currentAt(charge - share / 2);
    const volts = current === undefined ? 0 : rest - resistance * current;
    if (current === undefined || !(current > 0 && volts > 0)) return { points, time, taken, energy, heat, weak: true };
    const lasts = (share * capacity) / current;
    time += lasts;
    taken += share * capacity;
    energy += lasts * current * volts;
    heat += lasts * current ** 2 * resistance;
    charge = from - (i + 1) * share;
    mark();
  }
  return { points, time, taken, energy, heat };
}
