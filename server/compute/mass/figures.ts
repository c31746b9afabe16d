import type { Quantity } from "../../../grammar/units/quantity";
import { addBanded, bandedPart, bandedProperties, noBanded, type BandedSum } from "./banded";
import type { PartMass } from "./by-path";
import type { MassParts } from "./element";
import { partMoments, type KnownMoments } from "./part-moments";
import { pathsOver } from "./paths";
import type { MassProperties } from "./properties";

export interface MassFigures extends MassProperties<Quantity> {
  /** Without the parts that are `removable`; undefined if nothing else weighs anything. */
  readonly empty?: Quantity;
  /** Every part that weighs something, what holds it, and both of a mirrored pair under the plain name. */
  readonly byPath: ReadonlyMap<string, PartMass<Quantity>>;
}

/**
 * Mass, CG and inertia of one loading with their bands; undefined if nothing weighs anything yet. Moments of the parts
 * add, so each part is worked out anew only for the variables it depends on, and CG and inertia follow to first order
 * (JCGM 100:2008, 5.1 and 5.2). What is in `known` is taken from there.
 */
export function massFigures(
  design: MassParts<Quantity> & { readonly removable?: readonly string[] }, known?: KnownMoments,
): MassFigures | undefined {
  const all = noBanded();
  const empty = noBanded();
  const sums = new Map<string, BandedSum>();
  const removable = new Set(design.removable);
  for (const [path, moments] of partMoments(design, known)) {
    addBanded(all, moments);
    let stays = true;
    for (const over of pathsOver(path)) {
      let sum = sums.get(over);
      if (!sum) sums.set(over, (sum = noBanded()));
      addBanded(sum, moments);
      if (removable.has(over)) stays = false;
    }
    if (stays) addBanded(empty, moments);
  }
  const whole = bandedProperties(all);
  if (!whole) return undefined;
  const byPath = new Map<string, PartMass<Quantity>>();
  for (const [path, sum] of sums) {
    const part = bandedPart(sum);
    if (part) byPath.set(path, part);
  }
  const emptyMass = bandedPart(empty)?.mass;
  return emptyMass ? { ...whole, empty: emptyMass, byPath } : { ...whole, byPath };
}
