import type { Surface } from "../../model/design/geometry";
import { inPlane } from "./influence";
import type { Lattice } from "./lattice";
import { lengthOf } from "./pieces";

/** A strip of a lattice for unsymmetrical flow, or its image on the other side. */
export interface LateralStrip {
  /** Path of its surface. */
  readonly path: string;
  /** Of its middle: from the plane of symmetry, m. */
  readonly y: number;
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
    const own: LateralStrip = {
      path: surfaces[pieces[piece].surface].path, y: middle.y, chord: middle.chord, length, ny: -(right.z - left.z) / length,
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
