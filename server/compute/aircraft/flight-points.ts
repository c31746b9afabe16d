import { least } from "../flight/search";
import { forwardLimit, type ForwardLimit } from "./forward-limit";
import { levelFlight, type FlightModel, type LevelFlight, type Loaded } from "./flight-model";
import { levelTable, type LevelTable } from "./level-table";
import { stallSpeed, type Stall } from "./stall-speed";
import { trimAt, type Trim } from "./trim";

/** Speeds of level flight at which something is best, m/s. */
export interface BestSpeeds {
  readonly leastDrag: number;
  readonly leastSink: number;
}

/** Least speed of cruise over the stall where none is given. */
export const overStall = 1.3;

export interface FlightPoints {
  readonly stall: Stall;
  /** Trimmed there, absent where no control pitches. */
  readonly stallTrim?: Trim;
  readonly cruise: LevelFlight;
  readonly cruiseTrim?: Trim;
  /** At the speeds of least drag and least sink. */
  readonly glide: LevelFlight;
  readonly sink: LevelFlight;
  readonly forward?: ForwardLimit;
}

/** Undefined where sections aren't known, or it can't be trimmed. */
export function stallOf({ basis, sections, air }: FlightModel, { mass, x, z }: Loaded, near?: Stall): Stall | undefined {
  return stallSpeed(basis, sections, { mass, air, cgX: x, cgZ: z }, near);
}

/** From a table of level flight; at the stall where the true best lies below it. */
export function bestSpeeds(table: LevelTable): BestSpeeds | undefined {
  const [low, high] = table.range;
  const drag = least((speed) => table.drag(speed), low, high);
  const sink = least((speed) => { const force = table.drag(speed); return force === undefined ? undefined : force * speed; }, low, high);
  return drag && sink && { leastDrag: drag.at, leastSink: sink.at };
}

/** The points of flight of one loading. `best` may be that of a neighbour whose points lie close by: best values don't hang on it to first order; `near` are its points. */
export function flightPoints(model: FlightModel, loaded: Loaded, cruise: number | undefined, best: BestSpeeds, near?: Pick<FlightPoints, "stall" | "forward">): FlightPoints | undefined {
  const { basis, air, stance } = model;
  const stall = stallOf(model, loaded, near?.stall);
  if (!stall) return undefined;
  const level = (speed: number) => levelFlight(model, loaded, Math.max(speed, stall.speed));
  const cruising = levelFlight(model, loaded, cruise ?? Math.max(best.leastDrag, overStall * stall.speed));
  const [glide, sink] = [level(best.leastDrag), level(best.leastSink)];
  if (!cruising || !glide || !sink) return undefined;
  const trim = (liftCoefficient: number) => trimAt(basis, { liftCoefficient, cgX: loaded.x, cgZ: loaded.z });
  return {
    stall, cruise: cruising, glide, sink,
    stallTrim: trim(stall.limit.liftCoefficient), cruiseTrim: trim(cruising.state.liftCoefficient),
    forward: forwardLimit(basis, model.sections, { mass: loaded.mass, air, cgZ: loaded.z, stance }, near?.forward?.stall),
  };
}

/** Over the stall: no model flies level as fast. */
const fastest = 5.5;

/** Table and best speeds of a loading, from its stall to well past any cruise. */
export function speedsOf(model: FlightModel, loaded: Loaded): { readonly stall: Stall; readonly table: LevelTable; readonly best: BestSpeeds } | undefined {
  const stall = stallOf(model, loaded);
  const table = stall && levelTable(model, loaded, stall.speed, fastest * stall.speed);
  const best = table && bestSpeeds(table);
  return table && best && { stall, table, best };
}

/** Height lost each second in a shallow glide, m/s: speed × drag over lift. */
export const sinkRate = ({ speed, drag, state }: LevelFlight): number => (speed * drag) / state.liftCoefficient;
