import type { Section } from "../../model/design/geometry";
import { measuredLine } from "../section-air/measured";
import { meanLine } from "../section/mean-line";
import { thinSection } from "../section/thin-section";

/**
 * Where along the chord a strip has its bound lines and its control points, as shares: the roots that make the lattice of
 * a plate in plane flow exact (C. E. Lan, J. Aircraft 11, 1974, p. 518). The last control point is the trailing edge.
 */
export function chordPlaces(rows: number): { readonly bound: Float64Array; readonly control: Float64Array } {
  const share = (k: number) => (1 - Math.cos((Math.PI * k) / rows)) / 2;
  return {
    bound: Float64Array.from({ length: rows }, (_, k) => share(k + 0.5)),
    control: Float64Array.from({ length: rows }, (_, k) => share(k + 1)),
  };
}

/**
 * Slopes of the mean line at the control points. A constant and a linear part are added so that the lattice gives in plane
 * flow just the zero-lift angle and moment of thin-section theory, or those that were measured, or that the section overrides,
 * with however few rows. A section that is none counts as flat.
 */
export function camberSlopes(section: Section, rows: number): Float64Array {
  const line = meanLine(section.shape) ?? { height: () => 0, slope: () => 0 };
  const thin = { ...thinSection(line), ...(section.polar ? measuredLine(section.polar) : {}) };
  const zeroLiftAngle = section.zeroLiftAngle ?? thin.zeroLiftAngle;
  const moment = section.moment ?? thin.moment;
  return fitted(chordPlaces(rows).control.map((x) => line.slope(x)), { zeroLiftAngle, moment });
}

/** Slopes with a constant and a linear part added, so that in plane flow the rows give just this angle and moment. */
export function fitted(slopes: Float64Array, wanted: { readonly zeroLiftAngle: number; readonly moment: number }): Float64Array {
  const has = planeFlow(slopes);
  const bend = (-4 / Math.PI) * (wanted.moment - has.moment);
  const turn = wanted.zeroLiftAngle - has.zeroLiftAngle + bend / 2;
  return slopes.map((slope, k) => slope + turn + bend * Math.cos((Math.PI * (k + 1)) / slopes.length));
}

/** Glauert's integrals by the rule the lattice amounts to. */
function planeFlow(slopes: Float64Array): { zeroLiftAngle: number; moment: number } {
  const rows = slopes.length;
  let zeroLift = 0;
  let moment = 0;
  slopes.forEach((slope, k) => {
    const theta = (Math.PI * (k + 1)) / rows;
    const part = ((k === rows - 1 ? 0.5 : 1) * slope) / rows;
    zeroLift += part * (1 - Math.cos(theta));
    moment -= (Math.PI / 2) * part * (Math.cos(theta) - Math.cos(2 * theta));
  });
  return { zeroLiftAngle: zeroLift, moment };
}
