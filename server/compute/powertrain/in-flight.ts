import { bracketedRoot } from "../root";
import type { PlantRun } from "./plant-run";
import { runAt, type RunCase, type RunResult } from "./run-at";

/** All powerplants of an aircraft over airspeed and throttle; nominal or any other state of its packs. */
export interface FlightPower {
  readonly run: (speed: number, throttle: number) => RunResult;
  /** Of a run: forward thrust of all, N, and what all packs give, W. */
  readonly forward: (run: RunResult) => number;
  readonly drawn: (run: RunResult) => number;
  /** Forward, N, at full throttle or the one given. */
  readonly thrust: (speed: number, throttle?: number) => number;
  /** Throttle for a forward thrust, all motors alike; undefined where full throttle does not reach it. */
  readonly throttleFor: (thrust: number, speed: number) => number | undefined;
  /** What the packs give for it, W. */
  readonly electricPower: (thrust: number, speed: number) => number | undefined;
}

/** Undefined without a powerplant, or where one lacks something. */
export function flightPower(design: Omit<RunCase, "throttle" | "speed">): FlightPower | undefined {
  const { powerplants } = design;
  if (powerplants.length === 0) return undefined;
  const run = (speed: number, throttle: number) => runAt({ ...design, speed, throttle });
  if (run(0, 1).powerplants.some((plant) => !("thrust" in plant))) return undefined;
  const forward = (result: RunResult) =>
    result.powerplants.reduce((sum, plant, i) => sum - (plant as PlantRun).thrust * powerplants[i].thrustAxis[0], 0);
  const drawn = (result: RunResult) => result.sources.reduce((sum, source) => sum + ("power" in source ? source.power : 0), 0);
  const thrust = (speed: number, throttle = 1) => forward(run(speed, throttle));
  const throttleFor = (wanted: number, speed: number) => {
    const most = thrust(speed, 1);
    return most >= wanted ? bracketedRoot((throttle) => thrust(speed, throttle) - wanted, 0, 1, 1e-4) ?? (most === wanted ? 1 : undefined) : undefined;
  };
  return {
    run, forward, drawn, thrust, throttleFor,
    electricPower: (wanted, speed) => {
      const throttle = throttleFor(wanted, speed);
      return throttle === undefined ? undefined : drawn(run(speed, throttle));
    },
  };
}
