import type { Surface, SurfaceKind } from "../../model/design/geometry";
import { inPlane } from "./influence";
import type { Lattice } from "./lattice";
import { lengthOf } from "./pieces";

/** A strip of a lattice for unsymmetrical flow, or its image on the other side. */
export interface LateralStrip {
  /** Path of its surface. */
  readonly path: string;
  readonly kind: SurfaceKind;
  /** Of the quarter chord in its middle, m. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly chord: number;
  /** As built, m. */
  readonly length: number;
  /** Its normal across the stream, to the right. */
  readonly ny: number;
  /** Where its ends lie along the half as built: 0 root, 1 tip, less than 0 between the roots. */
  readonly along: readonly [number, number];
  /** Place of the strip that is solved; the same twice with an image. */
  readonly solved: number;
  readonly image: boolean;
}

/** Each solved strip, and after it its image where it has one. */
export function lateralStrips({ strips, pieces, images, symmetric, elements }: Lattice, surfaces: readonly Surface[]): LateralStrip[] {
  return strips.flatMap(({ piece, left, middle, right }, solved): LateralStrip[] => {
    const length = lengthOf({ left, right });
    const { path, kind } = surfaces[pieces[piece].surface];
    const own: LateralStrip = {
      path, kind, x: middle.x + middle.chord / 4, y: middle.y, z: middle.z, chord: middle.chord, length, ny: -(right.z - left.z) / length,
      along: [left.along, right.along], solved, image: false,
    };
    if (!symmetric || inPlane(elements, solved * elements.rows)) return [own];
    return [own, { ...own, path: surfaces[images[piece].surface].path, y: -own.y, ny: -own.ny || 0, along: [right.along, left.along], image: true }];
  });
}

/** Slopes of all strips as those of the solved ones: half the difference to the image's, so that both sides go opposite ways. */
export function oddPart({ elements: { count, rows } }: Lattice, strips: readonly LateralStrip[], slopes: Float64Array): Float64Array {
  const odd = new Float64Array(count);
  strips.forEach(({ solved, image }, s) => {
    const both = strips[s + 1]?.image === true || image;
    const share = (image ? -1 : 1) / (both ? 2 : 1);
    for (let k = 0; k < rows; k++) odd[solved * rows + k] += share * slopes[s * rows + k];
  });
  return odd;
}

/** Side force, roll and yaw by unsymmetrical circulations on each solved strip, over dynamic pressure; its image has the same. */
export function oddStripLoads({ strips, elements: e }: Lattice, circulation: Float64Array, about: { readonly x: number; readonly z: number }) {
  return strips.map((_, s) => {
    const sum = { side: 0, roll: 0, yaw: 0 };
    for (let i = s * e.rows; i < (s + 1) * e.rows; i++) {
      const right = -2 * circulation[i] * (e.bz[i] - e.az[i]);
      const up = 2 * circulation[i] * (e.by[i] - e.ay[i]);
      sum.side += right;
      sum.roll += ((e.az[i] + e.bz[i]) / 2 - about.z) * right - ((e.ay[i] + e.by[i]) / 2) * up;
      sum.yaw -= ((e.ax[i] + e.bx[i]) / 2 - about.x) * right;
    }
    return sum;
  });
}
