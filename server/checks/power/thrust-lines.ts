import type { Fix } from "../../../shared/finding";
import { together, type Contribution } from "../../compute/motor-out/plant";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { setProperty } from "../solve/edit";
import { literalOf, literalText } from "../solve/literal";
import type { Plant } from "./parts";

const degree = Math.PI / 180;

/** Angles that differ by less can't be set on a mount. */
export const slack = 0.25 * degree;

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

/** What two powerplants leave of each other's yaw and roll, N m, and its size over that of the larger one. */
export function leftOver(contributions: readonly Contribution[], ...paths: readonly [string, string]): { readonly yaw: number; readonly roll: number; readonly share: number } {
  const each = paths.map((path) => together(contributions.filter((one) => one.path === path)));
  const { yaw, roll } = together(each);
  return { yaw, roll, share: Math.hypot(yaw, roll) / Math.max(...each.map((one) => Math.hypot(one.yaw, one.roll)), 1e-9) };
}

/** Writes angles of a shaft, in the unit they are written in. Only at the top of the file, where no image turns them round. */
export function angleFix(subject: Subject, set: FigureSet, plant: Plant, angles: Readonly<Record<string, number>>): Fix | undefined {
  const block = subject.places.blockOf(set, plant.path);
  if (!block || plant.path.includes(".")) return undefined;
  const now: Readonly<Record<string, number>> = { right_thrust: sideAngle(plant), down_thrust: downAngle(plant) };
  const wrong = Object.entries(angles).filter(([name, angle]) => Math.abs(angle - now[name]) > 1e-9);
  const texts = wrong.map(([name, angle]) => {
    const unit = literalOf(block.slots.get(name)?.entry.value)?.unit ?? "deg";
    return { name, text: literalText(angle, unit, 0.1 * degree) };
  });
  const edits = texts.map(({ name, text }) => setProperty(subject.file, block, name, text));
  if (!edits.every((edit) => edit !== undefined)) return undefined;
  return { title: `Write ${texts.map(({ name, text }) => `${name} = ${text}`).join(" and ")}`, edits };
}
