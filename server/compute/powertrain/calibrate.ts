import type { Powerplant, Source } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { propellerMap } from "../propeller/propeller-map";
import { compareBench, type BenchMissing, type BenchQuantity, type BenchRun } from "./bench";

/** Inputs that may be moved, by the property that says them. */
export const movable = ["motor.kv", "motor.resistance", "motor.no_load_current", "propeller.pitch"] as const;
export type Movable = (typeof movable)[number];

export interface Calibration {
  readonly input: Movable;
  /** SI; what it is, and what it would have to be. */
  readonly from: number;
  readonly to: number;
  /** Root mean square of what is off, each over what a stand is good for; 1 is as good as measured. */
  readonly misfit: number;
  /** Does it meet the runs as closely as a stand measures? */
  readonly meets: boolean;
}

export interface Calibrations {
  /** As things stand. */
  readonly misfit: number;
  /** Best first. More than one that meets the runs: they don't tell which is wrong. */
  readonly moves: readonly Calibration[];
}

/** What a stand is good for, shares: common practice, no source (a speed sensor, a shunt, a scale). */
const goodFor: Readonly<Record<BenchQuantity, number>> = { rotation: 0.01, amps: 0.03, thrust: 0.03 };

/** How far an input may be moved, as a factor. Beyond, it is not the input that is wrong. */
const farthest: Readonly<Record<Movable, number>> = {
  "motor.kv": 1.6, "motor.resistance": 5, "motor.no_load_current": 5, "propeller.pitch": 1.6,
};

const tries = 12;

/**
 * Moves one input at a time, by as much as brings the computed nearest to all runs by least squares, and tells which does best.
 * A propeller by its own stations or table has no pitch to move.
 */
export function calibrate(plant: Powerplant, source: Source | undefined, runs: readonly BenchRun[], air: Air): Calibrations | BenchMissing {
  const own = plant.propeller && propellerMap(plant.propeller);
  const misfitOf = (moved: Powerplant): number | BenchMissing => {
    const map = moved.propeller === plant.propeller ? own : undefined;
    let [sum, count] = [0, 0];
    for (const run of runs) {
      const compared = compareBench(moved, source, run, air, map && (() => map));
      if ("missing" in compared) return compared;
      for (const { quantity, computed, measured } of compared) {
        sum += (Math.log(Math.max(computed, 1e-3 * measured) / measured) / goodFor[quantity]) ** 2;
        count++;
      }
    }
    return count > 0 ? Math.sqrt(sum / count) : 0;
  };
  const misfit = misfitOf(plant);
  if (typeof misfit !== "number") return misfit;
  const moves = movable.flatMap((input): Calibration[] => {
    const from = valueOf(plant, input);
    if (from === undefined || !(from > 0)) return [];
    const at = (ln: number) => {
      const found = misfitOf(withValue(plant, input, from * Math.exp(ln)));
      return typeof found === "number" ? found : Infinity;
    };
    const ln = least(at, Math.log(farthest[input]));
    return [{ input, from, to: from * Math.exp(ln), misfit: at(ln), meets: at(ln) <= 1 }];
  });
  return { misfit, moves: moves.sort((a, b) => a.misfit - b.misfit) };
}

function valueOf({ motor, propeller }: Powerplant, input: Movable): number | undefined {
  if (input === "propeller.pitch") return propeller?.stations || propeller?.measured ? undefined : propeller?.pitch;
  return motor?.[motorKeys[input]];
}

const motorKeys = { "motor.kv": "kv", "motor.resistance": "resistance", "motor.no_load_current": "noLoadCurrent" } as const;

function withValue(plant: Powerplant, input: Movable, value: number): Powerplant {
  if (input === "propeller.pitch") return { ...plant, propeller: plant.propeller && { ...plant.propeller, pitch: value } };
  return { ...plant, motor: plant.motor && { ...plant.motor, [motorKeys[input]]: value } };
}

/** The least of a function between ±`end`: the best of some tries, closed in on by golden sections. */
function least(f: (x: number) => number, end: number): number {
  const step = (2 * end) / tries;
  const places = Array.from({ length: tries + 1 }, (_, i) => -end + i * step);
  const values = places.map(f);
  const best = places[values.indexOf(Math.min(...values))];
  let [a, b] = [Math.max(-end, best - step), Math.min(end, best + step)];
  const share = (Math.sqrt(5) - 1) / 2;
  while (b - a > 1e-4) {
    const [c, d] = [b - share * (b - a), a + share * (b - a)];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}
