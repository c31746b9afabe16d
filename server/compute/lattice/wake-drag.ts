import { inPlane } from "./influence";
import type { Lattice } from "./lattice";
import { lengthOf } from "./pieces";
import { perStrip } from "./strip-loads";

/** What each strip's vortices do far downstream at each strip, along its normal, by rows; for equal and for opposite sides. */
export interface Wake {
  readonly even: Float64Array;
  readonly odd: Float64Array;
}

export function wakeOf({ strips, symmetric, elements, core }: Lattice): Wake {
  const count = strips.length;
  const [even, odd] = [new Float64Array(count * count), new Float64Array(count * count)];
  strips.forEach((at, i) => {
    const length = lengthOf(at);
    const [ny, nz] = [-(at.right.z - at.left.z) / length, (at.right.y - at.left.y) / length];
    const felt = (y: number, z: number, side: 1 | -1, { left, right }: (typeof strips)[number]) =>
      (turn(y - right.y, z - right.z, side * ny, nz, core) - turn(y - left.y, z - left.z, side * ny, nz, core)) / (2 * Math.PI);
    strips.forEach((from, j) => {
      const own = felt(at.middle.y, at.middle.z, 1, from);
      const image = symmetric && !inPlane(elements, j * elements.rows) ? felt(-at.middle.y, at.middle.z, -1, from) : 0;
      even[i * count + j] = own + image;
      odd[i * count + j] = own - image;
    });
  });
  return { even, odd };
}

/**
 * Yawing moment over dynamic pressure, m³, nose right, by the induced drag that a small unsymmetrical loading adds to a
 * symmetrical one: half the flow across the wake far downstream at each strip (L. Prandtl, NACA Technical Note 182).
 */
export function crossDrag(lattice: Lattice, wake: Wake, steady: Float64Array, turned: Float64Array): number {
  const { strips, elements: { rows } } = lattice;
  const [base, extra] = [perStrip(lattice, steady), perStrip(lattice, turned)];
  const downBase = across(wake.even, base);
  const downExtra = across(wake.odd, extra);
  return strips.reduce((sum, { left, right }, s) => {
    const drag = -(base[s] * downExtra[s] + extra[s] * downBase[s]) * lengthOf({ left, right });
    const y = (left.y + right.y) / 2;
    return sum + drag * y * (lattice.symmetric && !inPlane(lattice.elements, s * rows) ? 2 : 1);
  }, 0);
}

/** The product of two unsymmetrical loadings in the induced drag over dynamic pressure, m²: each strength with the other's flow. */
export function oddDrag(lattice: Lattice, wake: Wake, a: Float64Array, b: Float64Array): number {
  const strength = perStrip(lattice, a);
  const down = across(wake.odd, perStrip(lattice, b));
  const { strips, symmetric, elements } = lattice;
  return strips.reduce((sum, strip, s) =>
    sum - strength[s] * down[s] * lengthOf(strip) * (symmetric && !inPlane(elements, s * elements.rows) ? 2 : 1), 0);
}

/** Velocity along each strip's normal far downstream, over flight speed. */
function across(wake: Float64Array, strength: Float64Array): Float64Array {
  const count = strength.length;
  const flow = new Float64Array(count);
  for (let i = 0; i < count; i++) for (let j = 0; j < count; j++) flow[i] += wake[i * count + j] * strength[j];
  return flow;
}

/** Times 2π: velocity of a vortex along x of unit strength along (ny, nz) at (dy, dz) from it, left-handed about x. */
const turn = (dy: number, dz: number, ny: number, nz: number, core: number): number => (nz * dy - ny * dz) / (dy * dy + dz * dz + core);
