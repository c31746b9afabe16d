import type { Elements } from "./elements";
import { loadNormalwash, type Normalwash } from "./normalwash/fast";
import { normalwashPlainly } from "./normalwash/plain";

let shared: Normalwash | undefined | false;

/**
 * Puts into `out` the velocity along the normal (ny, nz) at a point for a unit of strength of each horseshoe: a bound line
 * from A to B and two legs from there along x to infinity (law of Biot and Savart). `core` (m²) keeps it finite on the lines
 * themselves. In WebAssembly where there is such; `e` must not change from call to call.
 */
export function normalwash(
  e: Elements, core: number, px: number, py: number, pz: number, ny: number, nz: number, out: Float64Array,
): void {
  shared ??= loadNormalwash() ?? false;
  const wash = shared && shared.at(e, core, px, py, pz, ny, nz);
  if (wash) out.set(wash);
  else normalwashPlainly(e, core, px, py, pz, ny, nz, out);
}
