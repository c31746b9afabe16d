import type { Elements } from "../elements";

const over4Pi = 1 / (4 * Math.PI);

/** As `normalwash`, a horseshoe at a time. */
export function normalwashPlainly(
  e: Elements, core: number, px: number, py: number, pz: number, ny: number, nz: number, out: Float64Array,
): void {
  const { count, ax, ay, az, bx, by, bz, legA, legB } = e;
  for (let j = 0; j < count; j++) {
    const dx = px - ax[j], dy = py - ay[j], dz = pz - az[j];
    const ex = px - bx[j], ey = py - by[j], ez = pz - bz[j];
    const acrossA = dy * dy + dz * dz + core;
    const acrossB = ey * ey + ez * ez + core;
    const r = Math.sqrt(dx * dx + acrossA);
    const s = Math.sqrt(ex * ex + acrossB);
    const bound = ((r + s) * (ny * (dz * ex - dx * ez) + nz * (dx * ey - dy * ex))) /
      (r * s * (r * s + dx * ex + dy * ey + dz * ez) + core * core);
    // (1 + dx/r)/across, in the form that does not cancel ahead of the vortex.
    const a = legA[j] * (nz * dy - ny * dz);
    const b = legB[j] * (nz * ey - ny * ez);
    const fromA = dx > 0 ? (a * (r + dx)) / (r * acrossA) : a / (r * (r - dx));
    const fromB = ex > 0 ? (b * (s + ex)) / (s * acrossB) : b / (s * (s - ex));
    out[j] = over4Pi * (bound + fromB - fromA);
  }
}
