import { inPlane } from "./influence";
import type { Lattice } from "./lattice";
import { lengthOf } from "./pieces";

/**
 * Yawing moment over dynamic pressure, m³, nose right, by the induced drag that a small unsymmetrical loading adds to a
 * symmetrical one: half the flow across the wake far downstream at each strip (L. Prandtl, NACA Technical Note 182).
 */
export function crossDrag(lattice: Lattice, steady: Float64Array, turned: Float64Array): number {
  const { strips, elements: { rows } } = lattice;
  const total = (of: Float64Array) => strips.map((_, s) => of.subarray(s * rows, (s + 1) * rows).reduce((sum, value) => sum + value, 0));
  const [base, extra] = [total(steady), total(turned)];
  const downBase = across(lattice, base, 1);
  const downExtra = across(lattice, extra, -1);
  return strips.reduce((sum, { left, right }, s) => {
    const drag = -(base[s] * downExtra[s] + extra[s] * downBase[s]) * lengthOf({ left, right });
    const y = (left.y + right.y) / 2;
    return sum + drag * y * (lattice.symmetric && !inPlane(lattice.elements, s * rows) ? 2 : 1);
  }, 0);
}

/** Velocity along each strip's normal far downstream, over flight speed. */
function across({ strips, symmetric, elements, core }: Lattice, strength: readonly number[], sense: 1 | -1): number[] {
  return strips.map((at) => {
    const length = lengthOf(at);
    const [ny, nz] = [-(at.right.z - at.left.z) / length, (at.right.y - at.left.y) / length];
    const felt = (y: number, z: number, side: 1 | -1, { left, right }: (typeof strips)[number]) =>
      (turn(y - right.y, z - right.z, side * ny, nz, core) - turn(y - left.y, z - left.z, side * ny, nz, core)) / (2 * Math.PI);
    return strips.reduce((sum, from, j) => {
      const own = felt(at.middle.y, at.middle.z, 1, from);
      const image = symmetric && !inPlane(elements, j * elements.rows) ? sense * felt(-at.middle.y, at.middle.z, -1, from) : 0;
      return sum + strength[j] * (own + image);
    }, 0);
  });
}

/** Times 2π: velocity of a vortex along x of unit strength along (ny, nz) at (dy, dz) from it, left-handed about x. */
const turn = (dy: number, dz: number, ny: number, nz: number, core: number): number => (nz * dy - ny * dz) / (dy * dy + dz * dz + core);
