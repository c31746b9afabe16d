import { normalwash } from "./horseshoe";
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
    normalwash(e, core, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], own);
    if (symmetric) {
      // The image acts on a point as the vortex does on the point's image.
      normalwash(e, core, e.px[i], -e.py[i], e.pz[i], -e.ny[i], e.nz[i], image);
      for (const j of alone) image[j] = 0;
    }
    senses.forEach((sense, k) => addRow(matrices[k], i * count, own, image, sense));
    work += count;
    if (work > stretch) {
      work = 0;
      yield;
    }
  }
  return matrices;
}

function addRow(matrix: Float64Array, from: number, own: Float64Array, image: Float64Array, sense: number): void {
  for (let j = 0; j < own.length; j++) matrix[from + j] = own[j] + sense * image[j];
}

/** Does a horseshoe lie in the plane of symmetry? */
export const inPlane = ({ ay, by }: Vortices["elements"], i: number): boolean => ay[i] === 0 && by[i] === 0;
