import type { Surface } from "../../model/design/geometry";
import { element, totalMass, type MassElement } from "./element";
import { addMoments, movedAft, noMoments, scaled } from "./moments";
import { panelArea, placedPanels, type PlacedPanel } from "./panel";
import type { Shapes } from "./shapes";
import { skinMass, skinWeighs } from "./skin";
import { pointMoments, sparMoments } from "./solids";

/**
 * Masses of a surface, both sides. Without a weight of its own: panels as weighed, else from the skin, and spars, with
 * the allowance on what is computed. With one: that weight, in proportion to the same; panels with neither weight nor
 * skin share what is left by area. `balance` moves the whole along x.
 */
export function surfaceElements(surface: Surface, allowance: number, shapes: Shapes): MassElement[] {
  const panels = placedPanels(surface);
  const elements = surface.weight === undefined
    ? builtElements(surface, panels, 1 + allowance, shapes)
    : weighedElements(surface, panels, surface.weight, shapes);
  return balanced(surface, elements);
}

function builtElements(surface: Surface, panels: readonly PlacedPanel[], factor: number, shapes: Shapes): MassElement[] {
  return [
    ...panels.flatMap((placed) => panelElements(surface, placed, factor, shapes)),
    ...surface.spars.flatMap((spar) => {
      const shape = sparMoments(spar);
      return element(spar.path, "spar", shape, shape.mass * spar.density * factor);
    }),
  ];
}

function panelElements(surface: Surface, placed: PlacedPanel, factor: number, shapes: Shapes): MassElement[] {
  const { weight, name } = placed.panel;
  const path = `${surface.path}.${name}`;
  if (weight !== undefined) return element(path, "panel", shapes.panelSkin(placed), weight);
  if (!skinWeighs(surface.skin)) return [];
  const faces = shapes.panelSkin(placed);
  const inside = shapes.panelVolume(placed);
  const { walls, fill } = skinMass(surface.skin, faces.mass, inside.mass);
  return [
    ...element(path, "skin", faces, walls * factor),
    ...(fill > 0 ? element(path, "fill", inside, fill * factor) : []),
  ];
}

function weighedElements(surface: Surface, panels: readonly PlacedPanel[], weight: number, shapes: Shapes): MassElement[] {
  const known = builtElements(surface, panels, 1, shapes);
  const knownMass = totalMass(known);
  const bare = panels.filter(({ panel }) => panel.weight === undefined && !skinWeighs(surface.skin));
  const rest = weight - knownMass;
  if (knownMass > 0 && (bare.length === 0 || rest <= 0)) {
    return known.map((e) => ({ ...e, moments: scaled(e.moments, weight / knownMass) }));
  }
  return [...known, ...byArea(surface, bare, rest, shapes)];
}

function byArea(surface: Surface, panels: readonly PlacedPanel[], mass: number, shapes: Shapes): MassElement[] {
  const area = panels.reduce((sum, { panel }) => sum + panelArea(panel), 0);
  if (!(area > 0)) {
    const root = rootLeadingEdge(surface);
    return root ? element(surface.path, "whole", pointMoments(root), mass) : [];
  }
  return panels.flatMap((placed) => element(
    `${surface.path}.${placed.panel.name}`, "whole", shapes.panelSkin(placed), (mass * panelArea(placed.panel)) / area,
  ));
}

function balanced(surface: Surface, elements: MassElement[]): MassElement[] {
  const root = rootLeadingEdge(surface);
  if (surface.balance === undefined || !root) return elements;
  return shiftedTo(root[0] + surface.balance, elements);
}

const rootLeadingEdge = ({ halves }: Surface) => halves[0]?.panels[0]?.inner.leadingEdge;

/** The elements moved together along x so that they balance at `x`. */
export function shiftedTo(x: number, elements: MassElement[]): MassElement[] {
  const sum = noMoments();
  for (const e of elements) addMoments(sum, e.moments);
  if (!(sum.mass > 0)) return elements;
  return elements.map((e) => ({ ...e, moments: movedAft(e.moments, x - sum.x / sum.mass) }));
}
