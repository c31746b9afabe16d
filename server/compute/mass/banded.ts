import { dimensions, type Dimension } from "../../../grammar/units/dimension";
import { quantity, type Quantity, type VariableId } from "../../../grammar/units/quantity";
import type { PartMass } from "./by-path";
import { addMoments, noMoments, type Moments, type Sum } from "./moments";
import { propertiesChange, propertiesOf, type MassProperties } from "./properties";

/** Moments with their change for the half-width of each variable. */
export interface BandedMoments {
  readonly middle: Moments;
  readonly changes: ReadonlyMap<VariableId, Moments>;
}

/** Banded moments being summed. */
export interface BandedSum {
  readonly middle: Sum;
  readonly changes: Map<VariableId, Sum>;
}

export const noBanded = (): BandedSum => ({ middle: noMoments(), changes: new Map() });

export function addBanded(to: BandedSum, from: BandedMoments): void {
  addMoments(to.middle, from.middle);
  for (const [variable, change] of from.changes) addChange(to, variable, change, 1);
}

export function addChange(to: BandedSum, variable: VariableId, change: Moments, factor: number): void {
  let sum = to.changes.get(variable);
  if (!sum) to.changes.set(variable, (sum = noMoments()));
  addMoments(sum, change, factor);
}

/** Mass and CG with their bands; undefined if nothing weighs anything. */
export function bandedPart({ middle, changes }: BandedMoments): PartMass<Quantity> | undefined {
  const properties = propertiesOf(middle);
  if (!properties) return undefined;
  return partOf(properties, [...changes].map(([variable, change]) => [variable, propertiesChange(middle, change)]));
}

/** Mass, CG and inertia with their bands; undefined if nothing weighs anything. */
export function bandedProperties({ middle, changes }: BandedMoments): MassProperties<Quantity> | undefined {
  const properties = propertiesOf(middle);
  if (!properties) return undefined;
  const changed = [...changes].map(([variable, change]): Changed => [variable, propertiesChange(middle, change)]);
  const about = (axes: keyof MassProperties["inertia"]) => banded(properties, changed, dimensions.inertia, (p) => p.inertia[axes]);
  return {
    ...partOf(properties, changed),
    inertia: { xx: about("xx"), yy: about("yy"), zz: about("zz"), xy: about("xy"), xz: about("xz"), yz: about("yz") },
  };
}

type Changed = readonly [VariableId, MassProperties];

function partOf(properties: MassProperties, changed: readonly Changed[]): PartMass<Quantity> {
  const place = (axis: 0 | 1 | 2) => banded(properties, changed, dimensions.length, (p) => p.cg[axis]);
  return { mass: banded(properties, changed, dimensions.mass, (p) => p.mass), cg: [place(0), place(1), place(2)] };
}

function banded(
  properties: MassProperties,
  changed: readonly Changed[],
  dimension: Dimension,
  pick: (properties: MassProperties) => number,
): Quantity {
  if (changed.length === 0) return quantity(pick(properties), dimension);
  const spread = new Map<VariableId, number>();
  for (const [variable, change] of changed) {
    const moved = pick(change);
    if (moved !== 0) spread.set(variable, moved);
  }
  return quantity(pick(properties), dimension, spread);
}
