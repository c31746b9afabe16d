import { standardGravity } from "../constants";
import type { Flow } from "../drag/flow";
import type { SectionsAir } from "../section-air/section-air";
import { airAt, type AirAt } from "./air-at";
import type { AirBasis } from "./air-basis";
import { firstLimit, liftLimits, type LiftLimit, type LimitQuery } from "./lift-limits";

export interface StallQuery extends LimitQuery {
  readonly mass: number;
  readonly air: Flow["air"];
  /** Lift over weight; 1 when absent. */
  readonly loadFactor?: number;
}

export interface Stall {
  /** m/s */
  readonly speed: number;
  /** What ends the slowest flight: the first wing or canard to reach its limit. */
  readonly limit: LiftLimit;
  /** Every surface that reaches a limit, in the order in which they do. */
  readonly limits: readonly LiftLimit[];
  /** The sections at this speed. */
  readonly sections: AirAt;
}

/** Rounds, and the share of the speed within which they have come to rest. */
const [rounds, rest] = [30, 1e-6];

/**
 * The slowest level flight, where the first wing or canard reaches its sections' limit at the Reynolds numbers of that very
 * speed; propeller off. `near`: that of a loading or shape much like it, to begin from. Trimmed, unless a stick is given. Undefined where sections aren't known, or nothing can be trimmed.
 */
export function stallSpeed(basis: AirBasis, sections: SectionsAir, { mass, air, loadFactor = 1, ...query }: StallQuery, near?: Pick<Stall, "speed" | "limit">): Stall | undefined {
  const force = loadFactor * mass * standardGravity;
  const speedAt = (lift: number) => Math.sqrt((2 * force) / (air.density * basis.reference.area * lift));
  let speed = near?.speed ?? speedAt(1);
  let last = near?.limit.liftCoefficient;
  for (let round = 0; round < rounds; round++) {
    const there = airAt(basis, sections, { speed, air });
    if (!there) return undefined;
    const limit = (last === undefined ? undefined : firstLimit(basis, there, query, last)) ?? first(liftLimits(basis, there, query));
    if (!limit) return undefined;
    last = limit.liftCoefficient;
    const next = speedAt(limit.liftCoefficient);
    if (!Number.isFinite(next)) return undefined;
    if (Math.abs(next - speed) <= rest * speed || round === rounds - 1) return stallAt(next, limit, there, () => liftLimits(basis, there, query));
    speed = next;
  }
  return undefined;
}

const first = (limits: readonly LiftLimit[]): LiftLimit | undefined => limits.find(({ kind, sense }) => kind !== "tailplane" && sense === "up");

/** The other surfaces' limits are looked for when somebody asks. */
function stallAt(speed: number, limit: LiftLimit, sections: AirAt, look: () => readonly LiftLimit[]): Stall {
  let limits: readonly LiftLimit[] | undefined;
  return { speed, limit, sections, get limits() { return (limits ??= look()); } };
}
