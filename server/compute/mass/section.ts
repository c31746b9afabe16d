import type { SectionShape } from "../../model/design/geometry";
import { sectionOutline, type OutlinePoint } from "./section-outline";
import type { Slice } from "./slice";

/** Moments of a section of unit chord about its leading edge, u aft along the chord and w up: of its outline, and of the area within. */
export interface SectionMoments {
  readonly outline: Slice;
  readonly area: Slice;
}

export type SectionSlices = (shape: SectionShape) => SectionMoments;

/** Works out each section once. */
export function sectionSlices(): SectionSlices {
  const known = new Map<unknown, SectionMoments>();
  return (shape) => {
    const key = shape.type === "naca" ? shape.digits : shape.type === "flat" ? shape.thickness : shape.points;
    let found = known.get(key);
    if (!found) known.set(key, (found = sectionMoments(shape)));
    return found;
  };
}

export function sectionMoments(shape: SectionShape): SectionMoments {
  const points = sectionOutline(shape);
  return { outline: outlineSlice(points), area: areaSlice(points) };
}

/** Of the line through the points; it is not closed at the trailing edge. */
function outlineSlice(points: readonly OutlinePoint[]): Slice {
  const sum = { size: 0, u: 0, w: 0, uu: 0, ww: 0, uw: 0 };
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1];
    const [x1, y1] = points[i];
    const length = Math.hypot(x1 - x0, y1 - y0);
    sum.size += length;
    sum.u += (length * (x0 + x1)) / 2;
    sum.w += (length * (y0 + y1)) / 2;
    sum.uu += (length * (x0 * x0 + x0 * x1 + x1 * x1)) / 3;
    sum.ww += (length * (y0 * y0 + y0 * y1 + y1 * y1)) / 3;
    sum.uw += (length * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1)) / 6;
  }
  return sum;
}

/** Of the polygon the points close, by Green's theorem; points run anticlockwise, over the upper side first. */
function areaSlice(points: readonly OutlinePoint[]): Slice {
  const sum = { size: 0, u: 0, w: 0, uu: 0, ww: 0, uw: 0 };
  let [x0, y0] = points[points.length - 1];
  for (const [x1, y1] of points) {
    const cross = x0 * y1 - x1 * y0;
    sum.size += cross / 2;
    sum.u += (cross * (x0 + x1)) / 6;
    sum.w += (cross * (y0 + y1)) / 6;
    sum.uu += (cross * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
    sum.ww += (cross * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
    sum.uw += (cross * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1)) / 24;
    [x0, y0] = [x1, y1];
  }
  return sum.size < 0 ? turned(sum) : sum;
}

/** A file that runs the other way round encloses the same area. */
function turned({ size, u, w, uu, ww, uw }: Slice): Slice {
  return { size: -size, u: -u, w: -w, uu: -uu, ww: -ww, uw: -uw };
}
