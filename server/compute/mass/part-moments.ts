import type { Quantity } from "../../../grammar/units/quantity";
import { settler } from "../../model/design/settle";
import { addChange, noBanded, type BandedMoments, type BandedSum } from "./banded";
import { massElements } from "./elements";
import type { MassElement, MassParts } from "./element";
import { addMoments } from "./moments";
import { Shapes } from "./shapes";

/** Moments worked out before, by the part and the allowance added to it: the loadings of a design share most of their parts. */
export type KnownMoments = WeakMap<object, { readonly allowance: Quantity; readonly moments: ReadonlyMap<string, BandedMoments> }>;

/** Moments of everything that weighs something, by its own path, with their changes. A path comes once for each part it belongs to. */
export function partMoments(design: MassParts<Quantity>, known: KnownMoments = new WeakMap()): (readonly [path: string, moments: BandedMoments])[] {
  const shapes = new Shapes();
  const { allowance } = design;
  return partsOf(design).flatMap(([whole, part]) => {
    const before = known.get(whole);
    if (before?.allowance === allowance) return [...before.moments];
    const moments = bandedPaths(part, shapes);
    known.set(whole, { allowance, moments });
    return [...moments];
  });
}

/** The design as single parts, each with what it is of the design. Deflections don't weigh anything. */
function partsOf({ surfaces, bodies, members, loads, allowance }: MassParts<Quantity>): (readonly [whole: object, part: MassParts<Quantity>])[] {
  const none = { surfaces: [], bodies: [], members: [], loads: [], allowance };
  return [
    ...surfaces.map((surface) => [surface, { ...none, surfaces: [{ ...surface, controls: [] }] }] as const),
    ...bodies.map((body) => [body, { ...none, bodies: [body] }] as const),
    ...members.map((member) => [member, { ...none, members: [member] }] as const),
    ...loads.map((load) => [load, { ...none, loads: [load] }] as const),
  ];
}

function bandedPaths(part: MassParts<Quantity>, shapes: Shapes): ReadonlyMap<string, BandedMoments> {
  const out = new Map<string, BandedSum>();
  const ready = settler(part);
  const each = (elements: readonly MassElement[], use: (sum: BandedSum, element: MassElement) => void): void => {
    for (const e of elements) {
      let sum = out.get(e.path);
      if (!sum) out.set(e.path, (sum = noBanded()));
      use(sum, e);
    }
  };
  each(massElements(ready.nominal, shapes), (sum, e) => addMoments(sum.middle, e.moments));
  for (const variable of ready.variables) {
    each(massElements(ready.at(variable, 1), shapes), (sum, e) => addChange(sum, variable, e.moments, 0.5));
    each(massElements(ready.at(variable, -1), shapes), (sum, e) => addChange(sum, variable, e.moments, -0.5));
  }
  return out;
}
