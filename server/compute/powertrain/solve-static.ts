import { runAt, type RunCase, type RunResult } from "./run-at";

export type { PlantResult, SourceResult, SourceRun } from "./run-at";

export type StaticCase = Omit<RunCase, "speed">;
export type StaticResult = RunResult;

/** All powerplants standing still: `runAt` without an airspeed. */
export const solveStatic = (at: StaticCase): StaticResult => runAt({ ...at, speed: 0 });
