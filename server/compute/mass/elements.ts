import { bodyElements } from "./body-elements";
import { element, type MassElement, type MassParts } from "./element";
import { Shapes } from "./shapes";
import { loadMoments, memberMoments } from "./solids";
import { surfaceElements } from "./surface-elements";

/** Everything that weighs something in a design, part by part. Parts not weighed yet are left out: see `missingWeights`. */
export function massElements(parts: MassParts, shapes = new Shapes()): MassElement[] {
  return [
    ...parts.surfaces.flatMap((surface) => surfaceElements(surface, parts.allowance, shapes)),
    ...parts.bodies.flatMap((body) => bodyElements(body, parts.allowance, shapes)),
    ...parts.members.flatMap((m) => (m.weight === undefined ? [] : element(m.path, "member", memberMoments(m), m.weight))),
    ...parts.loads.flatMap((l) => (l.weight === undefined ? [] : element(l.path, "load", loadMoments(l), l.weight))),
  ];
}
