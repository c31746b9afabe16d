import type { SectionShape } from "../../model/design/geometry";
import { nacaOutline } from "../section/naca";

export type OutlinePoint = readonly [x: number, y: number];

/** Intervals on each face: enough for the length and area of an outline to 0.02 %. */
const count = 100;

/**
 * The outline of a section in chords, x aft of the leading edge and y up, from the trailing edge over the upper face to
 * the trailing edge again. Digits that name no section give a flat plate of no thickness.
 */
export function sectionOutline(shape: SectionShape): readonly OutlinePoint[] {
  if (shape.type === "coordinates") return shape.points;
  if (shape.type === "flat") return plate(shape.thickness);
  return nacaOutline(shape.digits, count) ?? plate(0);
}

function plate(thickness: number): OutlinePoint[] {
  const half = thickness / 2;
  return [[1, 0], [1, half], [0, half], [0, -half], [1, -half], [1, 0]];
}
