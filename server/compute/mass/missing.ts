import type { Surface } from "../../model/design/geometry";
import type { MassParts } from "./element";
import { skinWeighs } from "./skin";

/** Paths of parts that must weigh something and don't; of a surface in part weighed, its panels that don't. */
export function missingWeights(parts: Omit<MassParts, "allowance">): string[] {
  return [
    ...parts.surfaces.flatMap(missingOf),
    ...parts.bodies.filter((b) => b.weight === undefined && !skinWeighs(b.skin)).map((b) => b.path),
    ...parts.members.filter((m) => m.weight === undefined).map((m) => m.path),
    ...parts.loads.filter((l) => l.weight === undefined).map((l) => l.path),
  ];
}

function missingOf(surface: Surface): string[] {
  if (surface.weight !== undefined || skinWeighs(surface.skin)) return [];
  const panels = surface.halves.flatMap((half) => half.panels);
  const bare = panels.filter((panel) => panel.weight === undefined);
  if (bare.length < panels.length) return [...new Set(bare.map((panel) => `${surface.path}.${panel.name}`))];
  return [surface.path];
}
