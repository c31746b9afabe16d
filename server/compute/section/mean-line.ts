import type { SectionShape } from "../../model/design/geometry";
import { nacaMeanLine } from "./naca";
import { outlineMeanLine } from "./outline-mean-line";

/** The line midway between upper and lower side. Both in chords, at the share `x` of the chord from the leading edge. */
export interface MeanLine {
  readonly height: (x: number) => number;
  /** dz/dx */
  readonly slope: (x: number) => number;
}

const straight: MeanLine = { height: () => 0, slope: () => 0 };

/** Mean line of any section; undefined for digits or coordinates that are no section. */
export function meanLine(shape: SectionShape): MeanLine | undefined {
  if (shape.type === "flat") return straight;
  if (shape.type === "naca") return nacaMeanLine(shape.digits);
  return outlineMeanLine(shape.points);
}
