import type { Surface, SurfaceKind } from "../../model/design/geometry";
import type { Lattice } from "./lattice";
import { lengthOf } from "./pieces";

/** One strip of one side, one chord deep. */
export interface StripLoad {
  readonly path: string;
  readonly kind: SurfaceKind;
  readonly side: "right" | "left" | "only";
  /** Middle of the strip's leading edge. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly chord: number;
  /** As built, and its extent in y. */
  readonly length: number;
  readonly width: number;
  /** y and z of its two ends, in the sense in which circulation counts positive. */
  readonly ends: readonly [readonly [y: number, z: number], readonly [y: number, z: number]];
  /** Where these ends lie along the half as built: 0 root, 1 tip, less than 0 between the roots. */
  readonly along: readonly [number, number];
  /** Circulation over flight speed, m: per radian of angle of attack, and at none. Lift coefficient = 2 Γ / chord. */
  readonly circulation: { readonly slope: number; readonly zero: number };
}

export function stripLoads(lattice: Lattice, surfaces: readonly Surface[], slope: Float64Array, zero: Float64Array): StripLoad[] {
  const { strips, pieces, images } = lattice;
  const [slopes, zeros] = [perStrip(lattice, slope), perStrip(lattice, zero)];
  const solved = strips.map(({ piece, left, middle, right }, s): StripLoad => {
    const { surface, side } = pieces[piece];
    return {
      path: surfaces[surface].path, kind: surfaces[surface].kind, side,
      x: middle.x, y: middle.y, z: middle.z, chord: middle.chord,
      length: lengthOf({ left, right }), width: Math.abs(right.y - left.y),
      ends: [[left.y, left.z], [right.y, right.z]],
      along: [left.along, right.along],
      circulation: { slope: slopes[s], zero: zeros[s] },
    };
  });
  if (!lattice.symmetric) return solved;
  return solved.flatMap((strip, s) => {
    const { surface, side } = images[strips[s].piece];
    const [[ya, za], [yb, zb]] = strip.ends;
    const { path, kind } = surfaces[surface];
    const [a, b] = strip.along;
    return [strip, { ...strip, path, kind, side, y: -strip.y, ends: [[-yb, zb], [-ya, za]], along: [b, a] }];
  });
}

/** The circulation of each solved strip, all its rows together. */
export function perStrip({ strips, elements: { rows } }: Lattice, circulation: Float64Array): Float64Array {
  const sums = new Float64Array(strips.length);
  for (let i = 0; i < circulation.length; i++) sums[Math.floor(i / rows)] += circulation[i];
  return sums;
}
