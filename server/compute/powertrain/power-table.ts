import { smoothCurve } from "../curve";
import type { FlightPower } from "./in-flight";
import type { RunResult } from "./run-at";

/** All powerplants over a range of airspeeds, worked out once at some and smooth between. */
export interface PowerTable {
  readonly range: readonly [low: number, high: number];
  /** Forward at full throttle, N; undefined outside the range. */
  readonly thrust: (speed: number) => number | undefined;
  /** What the packs give for a forward thrust, W; undefined where full throttle does not reach it, or below what the least throttle gives. */
  readonly electricPower: (thrust: number, speed: number) => number | undefined;
}

/** Fine enough for the little thrust of fast level flight, between braking and pulling. */
const throttles = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const places = 18;

/** From rest, or any other speed, on. Against the running points themselves thrust is within 0.5 % of that at rest, power within 2 % (a test). */
export function* powerTableSteps(power: FlightPower, from: number, to: number): Generator<void, PowerTable> {
  const speeds = Array.from({ length: places }, (_, i) => from + ((to - from) * i) / (places - 1));
  const runs: RunResult[][] = [];
  for (const throttle of throttles) {
    yield;
    runs.push(speeds.map((speed) => power.run(speed, throttle)));
  }
  const thrusts = runs.map((row) => smoothCurve(speeds, row.map((run) => power.forward(run))));
  const powers = runs.map((row) => smoothCurve(speeds, row.map((run) => power.drawn(run))));
  const inside = (speed: number) => speed >= from - 1e-9 * to && speed <= to * (1 + 1e-9);
  const full = thrusts[thrusts.length - 1];
  return {
    range: [from, to],
    thrust: (speed) => (inside(speed) ? full(speed) : undefined),
    electricPower: (thrust, speed) => {
      if (!inside(speed)) return undefined;
      const points = thrusts.map((of, i) => ({ thrust: of(speed), power: powers[i](speed) }));
      if (points[0].thrust > thrust || points[points.length - 1].thrust < thrust) return undefined;
      const rising = points.filter((point, i) => i === 0 || point.thrust > points[i - 1].thrust);
      return rising.length < 3 ? undefined : smoothCurve(rising.map((point) => point.thrust), rising.map((point) => point.power))(thrust);
    },
  };
}
