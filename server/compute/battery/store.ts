import type { Source } from "../../model/design/power";
import { emfOf, equivalentSource, type SourceMissing } from "./source";

/** What gives the energy: a voltage that falls with the charge, behind a resistance. */
export interface Store {
  /** A s */
  readonly capacity: number;
  /** Share of it a flight may use. */
  readonly usable: number;
  /** Open-circuit V at a charge of 0 to 1. */
  readonly emf: (charge: number) => number;
  /** ohm */
  readonly resistance: number;
}

/** A pack or several wired together, as one store. Packs in series or parallel are taken to empty together. */
export function storeOf(source: Source): Store | SourceMissing {
  const equivalent = equivalentSource(source);
  if ("missing" in equivalent) return equivalent;
  const { capacity, usableCharge, resistance, packs } = equivalent;
  return { capacity, resistance, usable: usableCharge / capacity, emf: (charge) => emfOf(source.wired, packs, charge) };
}

export interface Drain {
  /** Share of the capacity left. */
  readonly charge: number;
  /** s; less than asked where the charge came to its floor or the store could not give the power. */
  readonly time: number;
  /** A s taken. */
  readonly taken: number;
  /** J lost in the resistance. */
  readonly heat: number;
  /** Lowest under load, V. */
  readonly lowestVolts: number;
  readonly ended?: "charge" | "power";
}

/** Current for a power at the terminals, A: P = (E − R I) I; undefined where it is more than E²/4R. */
export function currentFor(emf: number, resistance: number, power: number): number | undefined {
  const root = emf ** 2 - 4 * resistance * power;
  return root >= 0 && emf > 0 ? (2 * power) / (emf + Math.sqrt(root)) : undefined;
}

/** Share of the capacity that one step takes; the time of a whole discharge is then within 0.01 %. */
const step = 0.005;

/**
 * A steady power (W, at the terminals) taken from a store for a time (s; Infinity for all it may give), from a charge down to `floor`,
 * by the midpoint rule over the charge. Not modelled: that a charge gives less at a high current or in the cold (for lithium packs a few
 * per cent), and the rest after.
 */
export function drain(store: Store, power: number, time: number, charge = 1, floor = 1 - store.usable): Drain {
  const { capacity, resistance, emf } = store;
  let [left, spent, heat, lowestVolts] = [charge, 0, 0, Infinity];
  const done = (ended?: Drain["ended"]): Drain => ({
    charge: left, time: spent, taken: (charge - left) * capacity, heat, lowestVolts, ...(ended && { ended }),
  });
  if (!(power > 0)) return { ...done(), time, lowestVolts: emf(charge) };
  while (spent < time) {
    const share = Math.min(step, left - floor);
    if (!(share > 1e-12)) return done("charge");
    const current = currentFor(emf(left - share / 2), resistance, power);
    if (current === undefined) return done("power");
    const lasts = Math.min((share * capacity) / current, time - spent);
    left -= (lasts * current) / capacity;
    spent += lasts;
    heat += lasts * current ** 2 * resistance;
    lowestVolts = Math.min(lowestVolts, power / current);
  }
  return done();
}

/**
 * Time (s) on a charge (A s) at a mean voltage and a steady power where less charge is given the faster it is taken: (V C/P) to the power
 * of the exponent, in units of the time the capacity was rated at (s) (L. W. Traub, J. Aircraft 48(2), 2011; the form from memory). 1: no loss.
 */
export function peukertTime(volts: number, charge: number, power: number, exponent: number, rated = 3600): number {
  return rated * ((volts * charge) / (power * rated)) ** exponent;
}
