import type { Quantity } from "../../../grammar/units/quantity";
import { settler } from "../../model/design/settle";
import { addChange, noBanded, type BandedMoments, type BandedSum } from "./banded";
import { massElements } from "./elements";
import type { MassElement, MassParts } from "./element";
import { addMoments } from "./moments";
import { Shapes } from "./shapes";

/** Moments of everything that weighs something, by its own path, with their changes. A path comes once for each part it belongs to. */
export function partMoments(design: MassParts<Quantity>): (readonly [path: string, moments: BandedMoments])[] {
  const shapes = new Shapes();
  return partsOf(design).flatMap((part) => [...bandedPaths(part, shapes)]);
}

/** The design as single parts. Deflections don't weigh anything. */
function partsOf({ surfaces, bodies, members, loads, allowance }: MassParts<Quantity>): MassParts<Quantity>[] {
  const none = { surfaces: [], bodies: [], members: [], loads: [], allowance };
  return [
    ...surfaces.map((surface) => ({ ...none, surfaces: [{ ...surface, controls: [] }] })),
    ...bodies.map((body) => ({ ...none, bodies: [body] })),
    ...members.map((member) => ({ ...none, members: [member] })),
    ...loads.map((load) => ({ ...none, loads: [load] })),
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
