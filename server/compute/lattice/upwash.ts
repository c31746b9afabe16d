import type { Vec3 } from "../../model/design/geometry";
import type { Cuts } from "./cuts";
import { normalwash } from "./horseshoe";
import type { Vortices } from "./influence";

/**
 * Upward velocity that the circulations cause at a point. Between the middles of two columns it is taken straight from one
 * to the other: at their edge a lone vortex would be felt, where the sheet it stands for is smooth.
 */
export function upwashBy(lattice: Vortices & { readonly columns: Cuts }, circulation: Float64Array): (point: Vec3) => number {
  const { elements, symmetric, core, columns: { middles } } = lattice;
  const wash = new Float64Array(circulation.length);
  const one = (x: number, y: number, z: number) => {
    normalwash(elements, core, x, y, z, 0, 1, wash);
    let sum = 0;
    for (let j = 0; j < wash.length; j++) sum += wash[j] * circulation[j];
    return sum;
  };
  // Where one side stands for both, the image acts on a point as the vortex does on the point's image.
  const at = (x: number, y: number, z: number) => one(x, y, z) + (symmetric ? one(x, -y, z) : 0);
  return ([x, y, z]) => {
    const across = symmetric ? Math.abs(y) : y;
    if (middles.length === 0 || across > middles[middles.length - 1]) return at(x, across, z);
    if (across <= middles[0]) return at(x, symmetric ? middles[0] : across, z);
    const next = middles.findIndex((middle) => middle >= across);
    const [low, high] = [middles[next - 1], middles[next]];
    const share = (across - low) / (high - low);
    return (1 - share) * at(x, low, z) + share * at(x, high, z);
  };
}
