import type { Vec3 } from "../../model/design/geometry";
import type { MassElement } from "./element";
import { addMoments, noMoments, type Sum } from "./moments";
import { pathsOver } from "./paths";
import { propertiesOf } from "./properties";

export interface PartMass<N = number> {
  readonly mass: N;
  readonly cg: Vec3<N>;
}

/** Mass and CG of every part, of what holds parts, and of both of a mirrored pair under the plain name. */
export function massByPath(elements: readonly MassElement[]): ReadonlyMap<string, PartMass> {
  const sums = new Map<string, Sum>();
  for (const { path, moments } of elements) {
    for (const over of pathsOver(path)) {
      let sum = sums.get(over);
      if (!sum) sums.set(over, (sum = noMoments()));
      addMoments(sum, moments);
    }
  }
  const out = new Map<string, PartMass>();
  for (const [path, sum] of sums) {
    const properties = propertiesOf(sum);
    if (properties) out.set(path, { mass: properties.mass, cg: properties.cg });
  }
  return out;
}
