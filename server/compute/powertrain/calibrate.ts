import type { Powerplant, Source } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { propellerMap } from "../propeller/propeller-map";
import { compareBench, type BenchDifference, type BenchMissing, type BenchQuantity, type BenchRun } from "./bench";
import type { MapOf } from "./drive-of";

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
  /** What is still off then. */
  readonly left: readonly BenchDifference[];
  /** Sum of squares: what is left, over what a stand is good for, and the move, over how far labels usually are off. */
  readonly unlikely: number;
}

export interface Calibrations {
  /** As things stand. */
  readonly misfit: number;
  /** The likeliest first. More than one that meets the runs: they don't tell which is wrong. */
  readonly moves: readonly Calibration[];
}

/** What a stand is good for, shares: common practice, no source (a speed sensor, a shunt, a scale). */
const goodFor: Readonly<Record<BenchQuantity, number>> = { rotation: 0.01, amps: 0.03, thrust: 0.03 };

/** How far an input may be moved, as a factor. Beyond, it is not the input that is wrong. */
const farthest: Readonly<Record<Movable, number>> = {
  "motor.kv": 1.6, "motor.resistance": 5, "motor.no_load_current": 5, "propeller.pitch": 1.6,
};

/**
 * By how much labels are usually off, shares. Speed per volt: fits to twelve small motors on a stand, 0.90 to 1.12 of the label (data
 * of Cao and Strawson). The others are common practice, no source: resistance with or without controller and leads, pitch as moulded.
 */
const usual: Readonly<Record<Movable, number>> = {
  "motor.kv": 0.05, "motor.resistance": 0.4, "motor.no_load_current": 0.4, "propeller.pitch": 0.07,
};

const tries = 12;

/** `calibrateSteps` at once. */
export function calibrate(plant: Powerplant, source: Source | undefined, runs: readonly BenchRun[], air: Air): Calibrations | BenchMissing {
  const steps = calibrateSteps(plant, source, runs, air);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Moves one input at a time, by as much as brings the computed nearest to all runs by least squares, and tells which does best.
 * A propeller by its own stations or table has no pitch to move. In steps of a few milliseconds.
 */
export function* calibrateSteps(
  plant: Powerplant, source: Source | undefined, runs: readonly BenchRun[], air: Air, mapOf: MapOf = propellerMap,
): Generator<void, Calibrations | BenchMissing> {
  const own = plant.propeller && mapOf(plant.propeller);
  const misfitOf = (moved: Powerplant): number | BenchMissing => {
    const map = moved.propeller === plant.propeller ? own : moved.propeller && propellerMap(moved.propeller);
    return misfit(moved, source, runs, air, map && (() => map));
  };
  const leftBy = (moved: Powerplant): BenchDifference[] => runs.flatMap((run) => {
    const compared = compareBench(moved, source, run, air);
    return "missing" in compared ? [] : compared;
  });
  const standing = misfitOf(plant);
  if (typeof standing !== "number") return standing;
  const moves: Calibration[] = [];
  for (const input of movable) {
    const from = inputOf(plant, input);
    if (from === undefined || !(from > 0)) continue;
    const at = (ln: number) => {
      const found = misfitOf(withInput(plant, input, from * Math.exp(ln)));
      return typeof found === "number" ? found : Infinity;
    };
    yield;
    const { x, value } = yield* least(at, Math.log(farthest[input]));
    const to = from * Math.exp(x);
    const left = leftBy(withInput(plant, input, to));
    moves.push({ input, from, to, misfit: value, meets: value <= 1, left, unlikely: left.length * value ** 2 + (x / usual[input]) ** 2 });
  }
  moves.sort((a, b) => a.unlikely - b.unlikely);
  return { misfit: standing, moves };
}

/** What is off in all runs together, root mean square, each over what a stand is good for; 0 where nothing was measured. */
export function misfit(
  plant: Powerplant, source: Source | undefined, runs: readonly BenchRun[], air: Air, mapOf?: MapOf,
): number | BenchMissing {
  let [sum, count] = [0, 0];
  for (const run of runs) {
    const compared = compareBench(plant, source, run, air, mapOf);
    if ("missing" in compared) return compared;
    for (const { quantity, computed, measured } of compared) {
      sum += (Math.log(Math.max(computed, 1e-3 * measured) / measured) / goodFor[quantity]) ** 2;
      count++;
    }
  }
  return count > 0 ? Math.sqrt(sum / count) : 0;
}

/** What an input of a powerplant is; a propeller by its own stations or table has no pitch to move. */
export function inputOf<N>({ motor, propeller }: Powerplant<N>, input: Movable): N | undefined {
  if (input === "propeller.pitch") return propeller?.stations || propeller?.measured ? undefined : propeller?.pitch;
  return motor?.[motorKeys[input]];
}

const motorKeys = { "motor.kv": "kv", "motor.resistance": "resistance", "motor.no_load_current": "noLoadCurrent" } as const;

/** The powerplant with one input at another value. */
export function withInput<N>(plant: Powerplant<N>, input: Movable, value: N): Powerplant<N> {
  if (input === "propeller.pitch") return { ...plant, propeller: plant.propeller && { ...plant.propeller, pitch: value } };
  return { ...plant, motor: plant.motor && { ...plant.motor, [motorKeys[input]]: value } };
}

/** The least of a function between ±`end`: the best of some tries, closed in on by golden sections. */
function* least(f: (x: number) => number, end: number): Generator<void, { readonly x: number; readonly value: number }> {
  const step = (2 * end) / tries;
  const places = Array.from({ length: tries + 1 }, (_, i) => -end + i * step);
  const values = places.map(f);
  const best = places[values.indexOf(Math.min(...values))];
  yield;
  let [a, b] = [Math.max(-end, best - step), Math.min(end, best + step)];
  const share = (Math.sqrt(5) - 1) / 2;
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [atC, atD] = [f(c), f(d)];
  while (b - a > 1e-4) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - share * (b - a);
      atC = f(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + share * (b - a);
      atD = f(d);
    }
  }
  return atC < atD ? { x: c, value: atC } : { x: d, value: atD };
}
