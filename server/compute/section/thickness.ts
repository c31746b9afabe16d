import type { SectionShape } from "../../model/design/geometry";
import { sectionOutline } from "../mass/section-outline";

type Point = readonly [x: number, y: number];

/**
 * Greatest thickness of a section over its chord, square to the chord: from its upper to its lower side at the same place, so
 * that the camber has no part in it. 0 of a section without an outline.
 */
export function sectionThickness(shape: SectionShape): number {
  if (shape.type === "flat") return shape.thickness;
  const outline = sectionOutline(shape);
  const nose = outline.reduce((first, [x], i) => (x < outline[first][0] ? i : first), 0);
  const [upper, lower] = [outline.slice(0, nose + 1).reverse(), outline.slice(nose)];
  return upper.reduce((most, [x, y]) => Math.max(most, y - heightAt(lower, x)), 0);
}

/** The height of a side, by rising x, at a place; at its end beyond. */
function heightAt(side: readonly Point[], x: number): number {
  const after = side.findIndex(([at]) => at >= x);
  if (after <= 0) return side[after === 0 ? 0 : side.length - 1]?.[1] ?? 0;
  const [[xa, ya], [xb, yb]] = [side[after - 1], side[after]];
  return ya + ((x - xa) / (xb - xa)) * (yb - ya);
}
