import { standardGravity } from "../constants";
import type { SectionsAir } from "../section-air/section-air";
import { modeAt, type AirBasis } from "./air-basis";
import { stateOf } from "./air-state";
import type { GroundStance } from "./ground-stance";
import type { LiftLimit } from "./lift-limits";
import { stallSpeed, type StallQuery } from "./stall-speed";

export interface ForwardQuery extends Omit<StallQuery, "cgX" | "pitch" | "loadFactor"> {
  /** Where a nose wheel is to be lifted. */
  readonly stance?: GroundStance;
}

/** How far ahead the balance point may lie, by the power of the pitch controls; x in m. */
export interface ForwardLimit {
  /** Where full nose-up stick just trims at the stall: farther ahead it can't be flown as slowly. */
  readonly stall: { readonly x: number; readonly speed: number; readonly limit: LiftLimit };
  /** Where full nose-up stick just lifts the nose wheel at 1.1 × that stall speed. */
  readonly rotation?: { readonly x: number; readonly speed: number };
  /** The one farther aft, which rules. */
  readonly x: number;
  readonly rule: "stall" | "rotation";
}

/** Speed at which the nose is to be lifted, over the stall speed. Common practice, no source. */
const rotationSpeed = 1.1;

/**
 * Forward limit of the balance point, in free air for the stall; on the wheels without thrust, friction and ground effect, the
 * first of which needs a little more stick with a high thrust line, the last of which takes downwash and some power from a tail. Undefined
 * where no control pitches or sections aren't known.
 */
export function forwardLimit(basis: AirBasis, sections: SectionsAir, { stance, ...query }: ForwardQuery, near?: ForwardLimit["stall"]): ForwardLimit | undefined {
  if (basis.controls.length === 0) return undefined;
  const stalled = stallSpeed(basis, sections, { ...query, cgX: basis.about, pitch: 1 }, near);
  if (!stalled) return undefined;
  const { speed, limit } = stalled;
  const { lift, moment } = stateOf(basis, limit);
  const x = basis.about - (moment(basis.about, query.cgZ) + (query.momentOfThrust ?? 0)) / lift;
  const stall = { x, speed, limit };
  const rotation = stance?.noseWheel ? rotationLimit(basis, stance, rotationSpeed * speed, query) : undefined;
  const rule = rotation && rotation.x > x ? "rotation" : "stall";
  return { stall, ...(rotation ? { rotation } : {}), rule, x: rotation ? Math.max(x, rotation.x) : x };
}

/** Weight turns about the main wheels against the air. */
function rotationLimit(
  basis: AirBasis, stance: GroundStance, speed: number, { mass, air, cgZ }: ForwardQuery,
): { readonly x: number; readonly speed: number } {
  const pressure = 0.5 * air.density * speed ** 2;
  const moment = pressure * stateOf(basis, { angle: stance.angle, pitch: 1 }).moment(stance.x, stance.z);
  const leanBack = cgZ === undefined ? 0 : (cgZ - stance.z) * Math.tan(stance.angle);
  return { x: stance.x - moment / (mass * standardGravity * Math.cos(stance.angle)) - leanBack, speed };
}

/** What the whole way of the stick does to lift and to the moment about x, as coefficients on the reference. */
export interface ElevatorPower {
  readonly noseUp: { readonly lift: number; readonly moment: number };
  readonly noseDown: { readonly lift: number; readonly moment: number };
}

export function elevatorPower({ modes, about, reference: { area, meanChord }, controls }: AirBasis, cgX: number): ElevatorPower | undefined {
  if (controls.length === 0) return undefined;
  const of = (m: number) => ({
    lift: modes[m].lift / area, moment: (modes[m].moment + (cgX - about) * modes[m].lift) / (area * meanChord),
  });
  return { noseUp: of(modeAt.noseUp), noseDown: of(modeAt.noseDown) };
}
