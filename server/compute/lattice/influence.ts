import { addNormalwash } from "./horseshoe";
import type { Lattice } from "./lattice";

/** Vortices, whether their images in y = 0 go with them, and how blunt they are. */
export type Vortices = Pick<Lattice, "elements" | "symmetric" | "core">;

/** Entries of the influence matrix between two yields: a few milliseconds. */
const stretch = 40_000;

/**
 * Normal velocity at each control point for a unit of circulation of each horseshoe, by rows, images included. A matrix for
 * each sense: 1 for flow that is the same on both sides, −1 for opposite. A vortex in the plane of symmetry has no image.
 */
export function* influenceSteps(lattice: Vortices, senses: readonly (1 | -1)[]): Generator<void, readonly Float64Array[]> {
  const { elements: e, symmetric, core } = lattice;
  const { count } = e;
  const matrices = senses.map(() => new Float64Array(count * count));
  const own = new Float64Array(count);
  const image = new Float64Array(count);
  const alone = Array.from({ length: count }, (_, j) => j).filter((j) => inPlane(e, j));
  let work = 0;
  for (let i = 0; i < count; i++) {
    own.fill(0);
    addNormalwash(e, core, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], own, 0);
    if (symmetric) {
      image.fill(0);
      addNormalwash(e, core, e.px[i], -e.py[i], e.pz[i], -e.ny[i], e.nz[i], image, 0);
      for (const j of alone) image[j] = 0;
    }
    for (const [k, sense] of senses.entries()) {
      const row = matrices[k].subarray(i * count, (i + 1) * count);
      for (let j = 0; j < count; j++) row[j] = own[j] + sense * image[j];
    }
    work += count;
    if (work > stretch) {
      work = 0;
      yield;
    }
  }
  return matrices;
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
