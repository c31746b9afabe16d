import type { Quantity } from "../../../grammar/units/quantity";
import type { Body, Load, Member, Receiver, Surface, Wheel } from "./geometry";
import type { Bench, Powerplant, Source } from "./power";
import type { PlannedSortie } from "./sortie";

export type AirframeClass =
  | "trainer" | "sport" | "aerobatic" | "glider" | "motor_glider" | "tailless"
  | "camera" | "scale" | "speed" | "slow" | "indoor" | "seaplane";

/** The air of the flying field. Absent values are those of the standard atmosphere at `altitude`. */
export interface Field<N = number> {
  readonly altitude: N;
  readonly temperature?: N;
  readonly pressure?: N;
}

/** One loading of the design, with all its parts worked out. */
export interface Design<N = number> {
  readonly title: string;
  readonly class: AirframeClass;
  /** Share added to computed structural weights for glue and paint. */
  readonly allowance: N;
  readonly cruise?: N;
  /** Airspeed not to be passed, in a dive. */
  readonly neverExceed?: N;
  /** How far this loading has its flaps down, rad. */
  readonly flaps?: N;
  readonly field: Field<N>;
  readonly surfaces: readonly Surface<N>[];
  readonly bodies: readonly Body<N>[];
  readonly members: readonly Member<N>[];
  readonly loads: readonly Load<N>[];
  readonly wheels: readonly Wheel<N>[];
  readonly receivers: readonly Receiver[];
  readonly sources: readonly Source<N>[];
  readonly powerplants: readonly Powerplant<N>[];
  readonly benches: readonly Bench<N>[];
  /** Flown in this loading. */
  readonly sorties: readonly PlannedSortie<N>[];
  /** Paths of parts that are batteries or optional: `mass.empty` leaves them out. */
  readonly removable: readonly string[];
}

/** The same shape with every quantity as a plain SI number. */
export type Settled<T> = T extends Quantity
  ? number
  : T extends string | number | boolean | undefined
    ? T
    : T extends readonly [infer A, infer B, infer C]
      ? readonly [Settled<A>, Settled<B>, Settled<C>]
      : T extends readonly [infer A, infer B]
        ? readonly [Settled<A>, Settled<B>]
        : T extends readonly (infer U)[]
          ? readonly Settled<U>[]
          : { readonly [K in keyof T]: Settled<T[K]> };
