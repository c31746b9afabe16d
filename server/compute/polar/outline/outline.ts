import type { SectionShape } from "../../../model/design/geometry";
import { nacaOutline } from "../../section/naca";

type Points = readonly (readonly [number, number])[];

/** Intervals a side of an outline made from a formula: fine enough that the panels see the formula. */
const fine = 120;

/** Share of the chord's power over which the two sides of a blunt trailing edge are brought together. */
const closing = 4;

/**
 * Outline of a section in chords, from the trailing edge over the upper side to the nose and back: leading edge at x = 0,
 * trailing edge at x = 1, closed. A blunt trailing edge is closed by thinning the section with the fourth power of x, as
 * the closed form of NACA Report 460 does. Undefined for digits that name no section, and for a flat plate.
 */
export function outlineOf(shape: SectionShape): Points | undefined {
  if (shape.type === "flat") return undefined;
  return shape.type === "naca" ? nacaOutline(shape.digits, fine, true) : closed(unit(shape.points));
}

function unit(points: Points): Points {
  const xs = points.map(([x]) => x);
  const least = Math.min(...xs);
  const chord = Math.max(...xs) - least;
  return points.map(([x, y]) => [(x - least) / chord, y / chord]);
}

function closed(points: Points): Points {
  const [x0, y0] = points[0];
  const [x1, y1] = points[points.length - 1];
  const nose = points.reduce((best, [x], i) => (x < points[best][0] ? i : best), 0);
  const half = [(x1 - x0) / 2, (y1 - y0) / 2];
  return points.map(([x, y], i) => {
    const sign = (i <= nose ? 1 : -1) * Math.max(0, x) ** closing;
    return [x + sign * half[0], y + sign * half[1]];
  });
}
