import type { Load, Member, Spar, Vec3 } from "../../model/design/geometry";
import { addPoint, addSquare, noMoments, type Moments } from "./moments";
import { addSlice, gauss, mix, mixVec, rectangle, ring, type Slice } from "./slice";

/** Standard bodies at unit mass or unit density; any handbook of mechanics gives them. */

export function pointMoments(at: Vec3): Moments {
  const sum = noMoments();
  addPoint(sum, 1, ...at);
  return sum;
}

/** A solid box of mass 1 around `at`, its edges along the axes. */
export function boxMoments(at: Vec3, size: Vec3): Moments {
  const sum = noMoments();
  addPoint(sum, 1, ...at);
  addSquare(sum, 1 / 12, [size[0], 0, 0]);
  addSquare(sum, 1 / 12, [0, size[1], 0]);
  addSquare(sum, 1 / 12, [0, 0, size[2]]);
  return sum;
}

/** A slender rod of mass 1. */
export function rodMoments(start: Vec3, end: Vec3): Moments {
  const sum = noMoments();
  addPoint(sum, 1, ...mixVec(start, end, 0.5));
  addSquare(sum, 1 / 12, between(start, end));
  return sum;
}

/** The volume of a tube or bar whose size goes evenly from one end to the other. A bar's height stands as near to z as its line lets it. */
export function sparMoments({ start, end, section }: Pick<Spar, "start" | "end" | "section">): Moments {
  const sum = noMoments();
  const along = between(start, end);
  const length = Math.hypot(...along);
  if (length === 0) return sum;
  const [u, w] = across([along[0] / length, along[1] / length, along[2] / length]);
  for (const [t, weight] of gauss) addSlice(sum, weight * length, cut(section, t), mixVec(start, end, t), u, w);
  return sum;
}

/** Area of a spar's section at the share `t` of its length, m². */
export function sparArea(section: Spar["section"], t: number): number {
  return cut(section, t).size;
}

function cut(section: Spar["section"], t: number): Slice {
  return section.type === "tube"
    ? ring(mix(...section.outer, t), mix(...section.inner, t))
    : rectangle(mix(...section.width, t), mix(...section.height, t));
}

/** Two unit vectors across a line: width and height. */
function across(axis: Vec3): readonly [Vec3, Vec3] {
  const upright = Math.hypot(axis[0], axis[1]);
  // A line straight up has no direction nearest to z; its height is put along x.
  if (upright < 1e-9) return [[0, 1, 0], [1, 0, 0]];
  const u: Vec3 = [-axis[1] / upright, axis[0] / upright, 0];
  return [u, [-axis[2] * u[1], axis[2] * u[0], axis[0] * u[1] - axis[1] * u[0]]];
}

const between = (a: Vec3, b: Vec3): Vec3 => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];

export function loadMoments({ at, size }: Pick<Load, "at" | "size">): Moments {
  return size ? boxMoments(at, size) : pointMoments(at);
}

export function memberMoments({ start, end }: Pick<Member, "start" | "end">): Moments {
  return rodMoments(start, end);
}
