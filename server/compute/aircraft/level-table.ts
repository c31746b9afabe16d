import { smoothCurve } from "../curve";
import { levelFlight, type FlightModel, type LevelFlight, type Loaded } from "./flight-model";

/** Level flight over speed, worked out once at some speeds and smooth between: what searches and plots ask. */
export interface LevelTable {
  /** By rising speed. */
  readonly flights: readonly LevelFlight[];
  readonly range: readonly [low: number, high: number];
  /**
   * Drag in level flight, N, or with the lift of `loadFactor` times the weight; undefined outside the range. More than the weight drags
   * as in level flight at the same lift coefficient, less by its induced drag alone.
   */
  readonly drag: (speed: number, loadFactor?: number) => number | undefined;
}

/** Enough that drag between them is within 0.5 % (a test). */
const places = 24;

/** Speeds lie closer to each other near the stall. Undefined where flight isn't known at three of them or more. */
export function levelTable(model: FlightModel, loaded: Loaded, from: number, to: number): LevelTable | undefined {
  const speeds = Array.from({ length: places }, (_, i) => from * (to / from) ** (i / (places - 1)));
  const flights = speeds.flatMap((speed) => levelFlight(model, loaded, speed) ?? []);
  if (flights.length < 3) return undefined;
  const xs = flights.map(({ speed }) => Math.log(speed));
  const parasite = smoothCurve(xs, flights.map((one) => one.parasite));
  // Induced drag × speed⁴ hardly changes.
  const induced = smoothCurve(xs, flights.map((one) => one.induced * one.speed ** 4));
  const range = [flights[0].speed, flights[flights.length - 1].speed] as const;
  const pressure = (model.air.density * model.basis.reference.area) / 2;
  const slack = 1e-9;
  const drag = (speed: number, loadFactor: number) => {
    if (!(speed >= range[0] * (1 - slack) && speed <= range[1] * (1 + slack))) return undefined;
    const x = Math.log(speed);
    return pressure * speed ** 2 * (parasite(x) + (loadFactor ** 2 * induced(x)) / speed ** 4);
  };
  return { flights, range, drag: (speed, loadFactor = 1) => (loadFactor > 1 ? times(loadFactor, drag(speed / Math.sqrt(loadFactor), 1)) : drag(speed, loadFactor)) };
}

/** Of the same aircraft with `heavier` times the weight, at the same lift coefficients. */
export const heavierDrag = (table: LevelTable, heavier: number): LevelTable["drag"] => (speed, loadFactor) => times(heavier, table.drag(speed / Math.sqrt(heavier), loadFactor));

const times = (by: number, force: number | undefined): number | undefined => (force === undefined ? undefined : by * force);
