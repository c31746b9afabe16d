import type { StaticResult } from "../compute/powertrain/solve-static";
import type { Powerplant } from "../model/design/power";

/** One part that has a rating, with what it carries. A. */
export interface CurrentLoad {
  readonly path: string;
  readonly part: "motor" | "controller" | "pack";
  readonly actual: number;
  /** Lasting. */
  readonly allowed: number;
  readonly burst?: number;
}

/** Every rated part of the powerplants with its current in this run. */
export function currentLoads(run: StaticResult, plants: readonly Powerplant[]): CurrentLoad[] {
  const loads: CurrentLoad[] = [];
  for (const result of run.powerplants) {
    const plant = plants.find((p) => p.path === result.path);
    if (!plant || "missing" in result) continue;
    const { motor, controller } = plant;
    const actual = result.motorCurrent;
    if (motor?.maxCurrent) loads.push({ path: `${plant.path}.motor`, part: "motor", actual, allowed: motor.maxCurrent, burst: motor.burstCurrent });
    if (controller?.maxCurrent) {
      loads.push({ path: controller.path, part: "controller", actual, allowed: controller.maxCurrent, burst: controller.burstCurrent });
    }
  }
  for (const source of run.sources) {
    if ("missing" in source) continue;
    for (const pack of source.packs) {
      if (pack.maxCurrent) loads.push({ path: pack.path, part: "pack", actual: pack.current, allowed: pack.maxCurrent });
    }
  }
  return loads;
}

/** Least of allowed over actual current; undefined where nothing is rated or nothing flows. */
export function currentMargin(run: StaticResult, plants: readonly Powerplant[]): number | undefined {
  const margins = currentLoads(run, plants).filter((load) => load.actual > 0).map((load) => load.allowed / load.actual);
  return margins.length > 0 ? Math.min(...margins) : undefined;
}
