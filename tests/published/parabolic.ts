import { standardGravity } from "../../server/compute/constants";
import type { Aeroplane } from "../../server/compute/flight/aeroplane";

export interface Parabolic {
  /** N */
  readonly weight: number;
  readonly area: number;
  readonly aspectRatio: number;
  readonly spanEfficiency: number;
  readonly parasite: number;
  readonly density?: number;
  readonly stallSpeed: number;
}

/** CD = CD0 + CL²/(π A e). */
export function parabolic({ weight, area, aspectRatio, spanEfficiency, parasite, density = 1.225, stallSpeed }: Parabolic): Aeroplane {
  const drag = (speed: number, loadFactor = 1) => {
    const pressure = (density * speed ** 2 * area) / 2;
    const lift = (loadFactor * weight) / pressure;
    return pressure * (parasite + lift ** 2 / (Math.PI * aspectRatio * spanEfficiency));
  };
  return { mass: weight / standardGravity, density, stallSpeed, drag };
}

/** The same where climbing and gliding leave the lift as it is in level flight, as handbooks take it for shallow paths. */
export const shallow = (aeroplane: Aeroplane): Aeroplane => ({ ...aeroplane, drag: (speed) => aeroplane.drag(speed) });

/** Thrust of a steady power, W. */
export const powered = (aeroplane: Aeroplane, power: number): Aeroplane => ({ ...aeroplane, thrust: (speed) => power / speed });

/** Speed for a lift coefficient in level flight. */
export const speedFor = (weight: number, area: number, lift: number, density = 1.225): number => Math.sqrt((2 * weight) / (density * area * lift));
