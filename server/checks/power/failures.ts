import type { MotorOut } from "../../compute/motor-out/motor-out";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { flies } from "../readiness";

/** A powerplant dead in a loading. */
export interface Failure {
  readonly set: FigureSet;
  readonly one: MotorOut;
  /** Under which the figures of this failure go. */
  readonly figures: string;
}

/** Of the loadings whose weight is known well enough to judge them. */
export const failuresOf = (subject: Subject): Failure[] =>
  subject.sets.filter((set) => flies(set, subject)).flatMap((set) =>
    (set.facts.motorOut?.each ?? []).map((one): Failure => ({ set, one, figures: `motor_out.${one.path}` })));

/** The failure and its loading, to begin a message with. */
export const dead = ({ set, one }: Failure, { places }: Subject): string =>
  `with ${places.name(set, one.path)} dead and the rest at full throttle${set.loading.block ? `, in ${set.loading.name}` : ""}`;
