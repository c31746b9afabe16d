import type { DimensionName } from "../../grammar/units/dimension";
import type { Style } from "../../grammar/units/display";

/** A row of numbers in SI, with what they are. */
export interface Row {
  readonly title: string;
  readonly dimension: DimensionName;
  readonly style?: Style;
  /** Undefined where there is no answer. */
  readonly values: readonly (number | undefined)[];
}

/** Numbers for a plot: lines over one row of places. Nominal values, without bands. */
export interface Series {
  readonly name: string;
  readonly title: string;
  readonly x: Row;
  readonly lines: readonly Row[];
}
