import { standardGravity } from "../constants";
import type { Flow } from "../drag/flow";
import type { SectionsAir } from "../section-air/section-air";
import { airAt, liftMaxAt } from "./air-at";
import type { AirBasis } from "./air-basis";
import { deflectionsAt, type AirState, type Deflected } from "./air-state";
import type { LimitQuery } from "./lift-limits";
import { stateAt } from "./lift-limits";
import { profileDrag, type ProfileDrag } from "./profile-drag";

export interface LevelQuery extends LimitQuery, Flow {
  readonly mass: number;
  /** Lift over weight; 1 when absent. */
  readonly loadFactor?: number;
}

/** Steady flight that carries the weight. Coefficients on the reference area. */
export interface LevelState extends Pick<AirState, "angle" | "pitch" | "liftCoefficient" | "liftCoefficients"> {
  readonly deflections: readonly Deflected[];
  readonly induced: number;
  readonly profile: number;
  readonly profileDrag: ProfileDrag;
  /** Is the moment balanced, or the stick only held because none pitches or one was given? */
  readonly trimmed: boolean;
  /** Is any strip that counts past its section's limit of lift up? */
  readonly stalled: boolean;
  /** N m over dynamic pressure, m³: what is left about the balance point where it is not trimmed. */
  readonly moment: number;
}

/**
 * Angle, stick and drag at a speed. An aeroplane without pitch control keeps its stick in the middle, untrimmed. Undefined where
 * sections aren't known or the controls can't balance it. A stick past its way (over 1 in size) is given as it is.
 */
export function levelState(basis: AirBasis, sections: SectionsAir, { speed, air, mass, loadFactor = 1, ...query }: LevelQuery): LevelState | undefined {
  const there = airAt(basis, sections, { speed, air });
  const liftCoefficient = (2 * loadFactor * mass * standardGravity) / (air.density * speed ** 2 * basis.reference.area);
  if (!there || !Number.isFinite(liftCoefficient)) return undefined;
  const trimmed = query.pitch === undefined && basis.controls.length > 0;
  const state = stateAt(basis, query, liftCoefficient);
  if (!state) return undefined;
  const drag = profileDrag(basis, there, state);
  const { area } = basis.reference;
  const { angle, pitch, liftCoefficients } = state;
  return {
    angle, pitch, liftCoefficient: state.liftCoefficient, liftCoefficients, deflections: deflectionsAt(basis, pitch), trimmed,
    induced: state.inducedDrag / area, profile: drag.area / area, profileDrag: drag,
    stalled: basis.strips.some(({ kind, weight, inside, outermost }, i) => kind !== "fin" && weight > 0 && !inside && !outermost &&
      liftCoefficients[i] > 0 && liftCoefficients[i] > liftMaxAt(basis, there, i, pitch)),
    moment: state.moment(query.cgX, query.cgZ) + (query.momentOfThrust ?? 0),
  };
}
