import type { Plant } from "./parts";

/** How far a shaft points to the right of straight ahead, rad. */
export const sideAngle = ({ thrustAxis: [x, y] }: Plant): number => Math.atan2(y, -x);

/** How far it points down from straight ahead, rad. */
export const downAngle = ({ thrustAxis: [, , z] }: Plant): number => Math.asin(Math.max(-1, Math.min(1, -z)));

export type Pair = readonly [Plant, Plant];

/** How far two hubs may miss being each other's image, m. */
const near = 0.005;

/** Powerplants off the plane of symmetry whose hubs are each other's images. */
export function mirroredPairs(plants: readonly Plant[]): Pair[] {
  return plants.flatMap((first, i) => {
    const [x, y, z] = first.hub;
    const image = plants.slice(i + 1).find(({ hub }) => Math.abs(y) > near && Math.hypot(hub[0] - x, hub[1] + y, hub[2] - z) < near);
    return image ? [[first, image] as const] : [];
  });
}

/** Do the two turn against each other? */
export const turnsAgainst = ([first, second]: Pair): boolean =>
  first.propeller !== undefined && second.propeller !== undefined && first.propeller.clockwise !== second.propeller.clockwise;
