import { chordPlaces } from "./camber";
import { lengthOf } from "./pieces";
import type { Strip } from "./strips";

/** Horseshoes and control points, row by row within each strip. A leg's weight is 0 where its image takes it away. */
export interface Elements {
  readonly count: number;
  readonly rows: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly az: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly bz: Float64Array;
  readonly legA: Float64Array;
  readonly legB: Float64Array;
  readonly px: Float64Array;
  readonly py: Float64Array;
  readonly pz: Float64Array;
  /** Normal, across the stream. */
  readonly ny: Float64Array;
  readonly nz: Float64Array;
  /** Slope of the chord's camber and twist against the stream at the control point: dz/dx of the surface. */
  readonly slope: Float64Array;
}

export function elementsOf(strips: readonly Strip[], rows: number, symmetric: boolean): Elements {
  const { bound, control } = chordPlaces(rows);
  const count = strips.length * rows;
  const column = () => new Float64Array(count);
  const e = {
    count, rows, ax: column(), ay: column(), az: column(), bx: column(), by: column(), bz: column(), legA: column(), legB: column(),
    px: column(), py: column(), pz: column(), ny: column(), nz: column(), slope: column(),
  };
  strips.forEach(({ left, middle, right }, s) => {
    const length = lengthOf({ left, right });
    for (let k = 0; k < rows; k++) {
      const i = s * rows + k;
      e.ax[i] = left.x + bound[k] * left.chord;
      e.ay[i] = left.y;
      e.az[i] = left.z;
      e.bx[i] = right.x + bound[k] * right.chord;
      e.by[i] = right.y;
      e.bz[i] = right.z;
      e.legA[i] = symmetric && left.y === 0 ? 0 : 1;
      e.legB[i] = symmetric && right.y === 0 ? 0 : 1;
      e.px[i] = middle.x + control[k] * middle.chord;
      e.py[i] = middle.y;
      e.pz[i] = middle.z;
      e.ny[i] = -(right.z - left.z) / length;
      e.nz[i] = (right.y - left.y) / length;
      e.slope[i] = middle.slopes[k] - middle.twist;
    }
  });
  return e;
}
