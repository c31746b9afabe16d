import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf } from "./blade";
import { interpolate } from "./blade-types";
import { elementLoad } from "./element-load";

/** Torque for each share of the radius, over the whole torque: from 0 at the hub to 1 at the tip it adds up to 1. */
export type TorqueSpread = (share: number) => number;

/**
 * How a propeller's torque lies along its blades, by blade elements. Undefined where the whole is not above 0: air is not turned with
 * the blades then.
 */
export function torqueSpread(
  propeller: Propeller, { rotation, speed, air }: { readonly rotation: number; readonly speed: number; readonly air: Pick<Air, "density" | "viscosity"> },
): TorqueSpread | undefined {
  const blade = bladeOf(propeller);
  const tip = propeller.diameter / 2;
  const root = blade.elements[0].radius - blade.elements[0].width / 2;
  const rings = blade.elements.map((element) =>
    ({ share: element.radius / tip, dense: elementLoad(blade, element, rotation, speed, air).torque / element.width }));
  const line = [{ share: root / tip, dense: 0 }, ...rings, { share: 1, dense: 0 }];
  const whole = line.slice(1).reduce((sum, { share, dense }, i) => sum + ((share - line[i].share) * (dense + line[i].dense)) / 2, 0);
  if (!(whole > 0)) return undefined;
  const shares = line.map(({ share }) => share);
  const values = line.map(({ dense }) => dense / whole);
  return (share) => (share <= shares[0] || share >= 1 ? 0 : interpolate(shares, values, share));
}

export interface TurningAir {
  readonly spread: TorqueSpread;
  /** N m */
  readonly torque: number;
  /** Through the disc, kg/s. */
  readonly flux: number;
  /** Of the slipstream there, m. */
  readonly radius: number;
}

/**
 * Speed around the shaft in a slipstream at a distance from its middle, m/s. Each ring of air keeps the moment of momentum that its
 * ring of the disc gave it (H. Glauert, Airplane Propellers, 1935) while the slipstream narrows; air flows evenly through the disc.
 */
export function swirlSpeed({ spread, torque, flux, radius }: TurningAir, distance: number): number {
  const share = distance / radius;
  return share > 0 && share < 1 ? (torque * spread(share)) / (2 * flux * share ** 2 * radius) : 0;
}
