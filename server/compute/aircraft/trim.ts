import { modeAt, type AirBasis } from "./air-basis";
import { deflectionsAt, liftBy, momentBy, sharesOf, stateOf, type AirState, type Deflected } from "./air-state";
import { stickFor } from "./pitch-controls";

export interface TrimQuery {
  readonly liftCoefficient: number;
  /** The balance point, m; without z as if all stood at one height. */
  readonly cgX: number;
  readonly cgZ?: number;
  /** Nose-up moment of the thrust about it over dynamic pressure, m³; none when absent. */
  readonly momentOfThrust?: number;
}

/** Held level: the lift asked for, and no moment. */
export interface Trim extends AirState {
  readonly deflections: readonly Deflected[];
  /** Shares of the stick's way left nose up and nose down; less than 0 where the throw does not reach. */
  readonly throwLeft: { readonly noseUp: number; readonly noseDown: number };
  /** Is any throw not written, but the usual one? */
  readonly assumed: boolean;
}

/**
 * The angle and the stick that hold a lift coefficient without moment: lift is linear in both, so the angle follows from the
 * stick, and the moment is then a square at most. Undefined where no control pitches, or none can balance it.
 */
export function trimAt(basis: AirBasis, query: TrimQuery): Trim | undefined {
  if (basis.controls.length === 0) return undefined;
  const effect = trimmingEffect(basis, query);
  if (effect === undefined) return undefined;
  const pitch = stickFor(basis.controls, effect);
  const angle = angleFor(basis, query.liftCoefficient, sharesOf(basis, { angle: 0, pitch, pitchRate: 0 }));
  const state = stateOf(basis, { angle, pitch });
  if (!Number.isFinite(state.lift) || !Number.isFinite(pitch)) return undefined;
  return {
    ...state, deflections: deflectionsAt(basis, pitch), throwLeft: { noseUp: 1 - pitch, noseDown: 1 + pitch },
    assumed: basis.controls.some(({ assumed }) => assumed),
  };
}

/** The state at a lift coefficient with the stick held, whatever the moment. */
export function heldAt(basis: AirBasis, liftCoefficient: number, pitch = 0): AirState | undefined {
  const none = stateOf(basis, { angle: 0, pitch });
  const angle = (liftCoefficient - none.liftCoefficient) / (basis.modes[modeAt.angle].lift / basis.reference.area);
  return Number.isFinite(angle) ? stateOf(basis, { angle, pitch }) : undefined;
}

function angleFor(basis: AirBasis, liftCoefficient: number, shares: readonly number[]): number {
  return (liftCoefficient * basis.reference.area - liftBy(basis, shares)) / basis.modes[modeAt.angle].lift;
}

/** Of the two ways of the stick the one that needs its own: full nose up and full nose down need not be as strong. */
function trimmingEffect(basis: AirBasis, query: TrimQuery): number | undefined {
  const up = effectFor(basis, query, 1);
  if (up !== undefined && up >= 0) return up;
  const down = effectFor(basis, query, -1);
  return down !== undefined && down <= 0 ? down : undefined;
}

/** The stick's effect without moment, taken as if the mode of one way (1 nose up, −1 nose down) went on through the middle. */
function effectFor(basis: AirBasis, { liftCoefficient, cgX, cgZ, momentOfThrust = 0 }: TrimQuery, way: 1 | -1): number | undefined {
  const moment = (size: number) => {
    const shares = way > 0 ? [1, 0, size, 0, 0] : [1, 0, 0, size, 0];
    shares[modeAt.angle] = angleFor(basis, liftCoefficient, shares);
    return momentBy(basis, shares, cgX, cgZ) + momentOfThrust;
  };
  const [none, one, back] = [moment(0), moment(1), moment(-1)];
  const [line, bend] = [(one - back) / 2, (one + back) / 2 - none];
  const root = Math.sqrt(line * line - 4 * bend * none);
  const size = (-2 * none) / (line + Math.sign(line) * root);
  return none === 0 ? 0 : Number.isFinite(size) ? way * size : undefined;
}
