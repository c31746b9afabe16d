import { addNormalwash } from "./horseshoe";
import type { Lattice } from "./lattice";

/** Vortices, whether their images in y = 0 go with them, and how blunt they are. */
export type Vortices = Pick<Lattice, "elements" | "symmetric" | "core">;

/** Entries of the influence matrix between two yields: a few milliseconds. */
const stretch = 40_000;

/** Normal velocity at each control point for a unit of circulation of each horseshoe, by rows, images included. */
export function* influenceSteps(lattice: Vortices): Generator<void, Float64Array> {
  const { elements: e } = lattice;
  const values = new Float64Array(e.count * e.count);
  let work = 0;
  for (let i = 0; i < e.count; i++) {
    addWash(lattice, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], values, i * e.count);
    work += e.count;
    if (work > stretch) {
      work = 0;
      yield;
    }
  }
  return values;
}

/** Adds what each horseshoe of a lattice does at a point, with its image where one side stands for both. */
export function addWash(
  { elements, symmetric, core }: Vortices, x: number, y: number, z: number, ny: number, nz: number, out: Float64Array, offset: number,
): void {
  addNormalwash(elements, core, x, y, z, ny, nz, out, offset);
  // The image acts on a point as the vortex does on the point's image.
  if (symmetric) addNormalwash(elements, core, x, -y, z, -ny, nz, out, offset);
}
