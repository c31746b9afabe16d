import type { SectionShape } from "../../../model/design/geometry";
import { nacaOutline } from "../../section/naca";
import { closed, squared, type Points } from "./trailing-edge";

/** Intervals a side of an outline made from a formula: fine enough that the panels see the formula. */
const fine = 120;

/**
 * Outline of a section in chords, from the trailing edge over the upper side to the nose and back: leading edge at x = 0,
 * trailing edge at x = 1, closed and sharp. Undefined for digits that name no section, and for a flat plate.
 */
export function outlineOf(shape: SectionShape): Points | undefined {
  if (shape.type === "flat") return undefined;
  return shape.type === "naca" ? nacaOutline(shape.digits, fine, true) : closed(squared(unit(shape.points)));
}

function unit(points: Points): Points {
  const xs = points.map(([x]) => x);
  const least = Math.min(...xs);
  const chord = Math.max(...xs) - least;
  return points.map(([x, y]) => [(x - least) / chord, y / chord]);
}
