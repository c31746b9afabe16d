import type { Vec3 } from "../../model/design/geometry";
import type { Cuts } from "./cuts";
import { addWash, type Vortices } from "./influence";

/**
 * Upward velocity that the circulations cause at a point. Between the middles of two columns it is taken straight from one
 * to the other: at their edge a lone vortex would be felt, where the sheet it stands for is smooth.
 */
export function upwashBy(lattice: Vortices & { readonly columns: Cuts }, circulation: Float64Array): (point: Vec3) => number {
  const { symmetric, columns: { middles } } = lattice;
  const wash = new Float64Array(circulation.length);
  const at = (x: number, y: number, z: number) => {
    wash.fill(0);
    addWash(lattice, x, y, z, 0, 1, wash, 0);
    return wash.reduce((sum, value, j) => sum + value * circulation[j], 0);
  };
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
