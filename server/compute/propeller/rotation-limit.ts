import type { Propeller } from "../../model/design/power";
import { bladeTypeOf } from "./blade-types";

export interface RotationLimit {
  /** rad/s */
  readonly rotation: number;
  /** `type`: common practice for the type, no source, and under the maker's own figure always. */
  readonly from: "maker" | "type";
}

/** How fast a propeller may turn: the maker's figure, else rotation × diameter of its type. Undefined where nobody says: folding. */
export function rotationLimit(propeller: Propeller): RotationLimit | undefined {
  if (propeller.maxRotation !== undefined) return { rotation: propeller.maxRotation, from: "maker" };
  const limit = bladeTypeOf(propeller).rotationLimit;
  return limit === undefined ? undefined : { rotation: limit / propeller.diameter, from: "type" };
}
