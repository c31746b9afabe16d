import type { Powerplant, Source } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { propellerMap } from "../propeller/propeller-map";
import { driveAt } from "./drive";
import { driveOf, type DriveMissing, type MapOf } from "./drive-of";
import { runAt } from "./run-at";
import type { Missing } from "../battery/source";

/** One run on the stand, as far as it was measured. */
export interface BenchRun {
  /** 0 to 1. */
  readonly throttle: number;
  /** At the controller, V. Without them those of the source, half charged. */
  readonly volts?: number;
  /** Into the controller, A. */
  readonly amps?: number;
  /** Of the propeller, rad/s. */
  readonly rotation?: number;
  /** N */
  readonly thrust?: number;
}

export const benchQuantities = ["amps", "rotation", "thrust"] as const;
export type BenchQuantity = (typeof benchQuantities)[number];

export interface BenchDifference {
  readonly quantity: BenchQuantity;
  readonly computed: number;
  readonly measured: number;
  /** Computed over measured, less 1. */
  readonly off: number;
}

export type BenchPoint = Readonly<Record<BenchQuantity, number>>;
export type BenchMissing = DriveMissing | Missing<"battery">;

/** What the powerplant would do in that run, standing still. */
export function benchPoint(
  plant: Powerplant, source: Source | undefined, run: BenchRun, air: Air, mapOf: MapOf = propellerMap,
): BenchPoint | BenchMissing {
  if (run.volts !== undefined) {
    const found = driveOf(plant, air, mapOf);
    if ("missing" in found) return found;
    // Measured behind the leads.
    const { load, current } = driveAt({ ...found.drive, leadResistance: 0 }, run.volts, run.throttle);
    return { amps: current, rotation: load ? (load.tipSpeed * 2) / plant.propeller!.diameter : 0, thrust: load?.thrust ?? 0 };
  }
  if (!source) return { missing: "battery" };
  const [one] = runAt({ powerplants: [{ ...plant, source: source.path }], sources: [source], air, state: "nominal", throttle: run.throttle, mapOf }).powerplants;
  if ("missing" in one) return one;
  return { amps: one.packCurrent, rotation: one.rotation, thrust: one.thrust };
}

/** Computed against measured, for each quantity measured. */
export function compareBench(
  plant: Powerplant, source: Source | undefined, run: BenchRun, air: Air, mapOf?: MapOf,
): readonly BenchDifference[] | BenchMissing {
  const point = benchPoint(plant, source, run, air, mapOf);
  if ("missing" in point) return point;
  return benchQuantities.flatMap((quantity): BenchDifference[] => {
    const measured = run[quantity];
    if (measured === undefined || !(measured > 0)) return [];
    return [{ quantity, measured, computed: point[quantity], off: point[quantity] / measured - 1 }];
  });
}
