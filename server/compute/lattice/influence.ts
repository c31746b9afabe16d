import { addNormalwash } from "./horseshoe";
import type { Lattice } from "./lattice";

/** Vortices, whether their images in y = 0 go with them, and how blunt they are. */
export type Vortices = Pick<Lattice, "elements" | "symmetric" | "core">;

/** Entries of the influence matrix between two yields: a few milliseconds. */
const stretch = 40_000;

/**
 * Normal velocity at each control point for a unit of circulation of each horseshoe, by rows, images included: those of
 * flow that is the same on both sides, or opposite where `sense` is −1. A vortex in the plane of symmetry has no image.
 */
export function* influenceSteps(lattice: Vortices, sense: 1 | -1 = 1): Generator<void, Float64Array> {
  const { elements: e } = lattice;
  const values = new Float64Array(e.count * e.count);
  const image = new Float64Array(e.count);
  let work = 0;
  for (let i = 0; i < e.count; i++) {
    const row = values.subarray(i * e.count, (i + 1) * e.count);
    addNormalwash(e, lattice.core, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], row, 0);
    if (lattice.symmetric) {
      image.fill(0);
      addNormalwash(e, lattice.core, e.px[i], -e.py[i], e.pz[i], -e.ny[i], e.nz[i], image, 0);
      for (let j = 0; j < e.count; j++) if (!inPlane(e, j)) row[j] += sense * image[j];
    }
    work += e.count;
    if (work > stretch) {
      work = 0;
      yield;
    }
  }
  return values;
}

/** Does a horseshoe lie in the plane of symmetry? */
export const inPlane = ({ ay, by }: Vortices["elements"], i: number): boolean => ay[i] === 0 && by[i] === 0;

/** Adds what each horseshoe of a lattice does at a point, with its image where one side stands for both. */
export function addWash(
  { elements, symmetric, core }: Vortices, x: number, y: number, z: number, ny: number, nz: number, out: Float64Array, offset: number,
): void {
  addNormalwash(elements, core, x, y, z, ny, nz, out, offset);
  // The image acts on a point as the vortex does on the point's image.
  if (symmetric) addNormalwash(elements, core, x, -y, z, -ny, nz, out, offset);
}
