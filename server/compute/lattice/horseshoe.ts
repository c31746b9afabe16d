import type { Elements } from "./elements";
import { loadNormalwash, type Normalwash } from "./normalwash/fast";
import { addPlainly } from "./normalwash/plain";

let shared: Normalwash | undefined | false;

/**
 * Adds to `out`, from `offset` on, the velocity along the normal (ny, nz) at a point for a unit of strength of each
 * horseshoe: a bound line from A to B and two legs from there along x to infinity (law of Biot and Savart). `core` (m²)
 * keeps it finite on the lines themselves. In WebAssembly where there is such; `e` must not change from call to call.
 */
export function addNormalwash(
  e: Elements, core: number, px: number, py: number, pz: number, ny: number, nz: number, out: Float64Array, offset: number,
): void {
  shared ??= loadNormalwash() ?? false;
  const wash = shared && shared.at(e, core, px, py, pz, ny, nz);
  if (!wash) return addPlainly(e, core, px, py, pz, ny, nz, out, offset);
  for (let j = 0; j < wash.length; j++) out[offset + j] += wash[j];
}
