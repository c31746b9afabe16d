import type { DimensionName } from "../../grammar/units/dimension";
import type { Style } from "../../grammar/units/display";

/** One figure of the catalogue. Nothing prints a number that isn't in it. */
export interface FigureEntry {
  /** `cg.x`; with `<path>` where it exists for each part: `mass.<path>`, `power.<path>.static_rpm`. */
  readonly name: string;
  readonly title: string;
  /** What it tells a maker, in a sentence or two. */
  readonly text: string;
  readonly dimension: DimensionName;
  /** How people read it, where the dimension leaves that open: a margin is a `share`, in per cent. */
  readonly style?: Style;
}
