import type { Surface } from "../../model/design/geometry";
import { element, totalMass, type MassElement } from "./element";
import { addMoments, movedAft, noMoments, scaled } from "./moments";
import { panelArea, panelSkin, panelVolume, placedPanels, type PlacedPanel } from "./panel";
import type { SectionSlices } from "./section";
import { skinMass, skinWeighs } from "./skin";
import { pointMoments, sparMoments } from "./solids";

/**
 * Masses of a surface, both sides. Without a weight of its own: panels as weighed, else from the skin, and spars, with
 * the allowance on what is computed. With one: that weight, in proportion to the same; panels with neither weight nor
 * skin share what is left by area. `balance` moves the whole along x.
 */
export function surfaceElements(surface: Surface, allowance: number, slices: SectionSlices): MassElement[] {
  const panels = placedPanels(surface);
  const elements = surface.weight === undefined
    ? builtElements(surface, panels, 1 + allowance, slices)
    : weighedElements(surface, panels, surface.weight, slices);
  return balanced(surface, elements);
}

function builtElements(surface: Surface, panels: readonly PlacedPanel[], factor: number, slices: SectionSlices): MassElement[] {
  return [
    ...panels.flatMap((placed) => panelElements(surface, placed, factor, slices)),
    ...surface.spars.flatMap((spar) => {
      const shape = sparMoments(spar);
      return element(spar.path, "spar", shape, shape.mass * spar.density * factor);
    }),
  ];
}

function panelElements(surface: Surface, placed: PlacedPanel, factor: number, slices: SectionSlices): MassElement[] {
  const { weight, name } = placed.panel;
  const path = `${surface.path}.${name}`;
  if (weight !== undefined) return element(path, "panel", panelSkin(placed, slices), weight);
  if (!skinWeighs(surface.skin)) return [];
  const faces = panelSkin(placed, slices);
  const inside = panelVolume(placed, slices);
  const { walls, fill } = skinMass(surface.skin, faces.mass, inside.mass);
  return [
    ...element(path, "skin", faces, walls * factor),
    ...(fill > 0 ? element(path, "fill", inside, fill * factor) : []),
  ];
}

function weighedElements(surface: Surface, panels: readonly PlacedPanel[], weight: number, slices: SectionSlices): MassElement[] {
  const known = builtElements(surface, panels, 1, slices);
  const knownMass = totalMass(known);
  const bare = panels.filter(({ panel }) => panel.weight === undefined && !skinWeighs(surface.skin));
  const rest = weight - knownMass;
  if (knownMass > 0 && (bare.length === 0 || rest <= 0)) {
    return known.map((e) => ({ ...e, moments: scaled(e.moments, weight / knownMass) }));
  }
  return [...known, ...byArea(surface, bare, rest, slices)];
}

function byArea(surface: Surface, panels: readonly PlacedPanel[], mass: number, slices: SectionSlices): MassElement[] {
  const area = panels.reduce((sum, { panel }) => sum + panelArea(panel), 0);
  if (!(area > 0)) {
    const root = rootLeadingEdge(surface);
    return root ? element(surface.path, "whole", pointMoments(root), mass) : [];
  }
  return panels.flatMap((placed) => element(
    `${surface.path}.${placed.panel.name}`, "whole", panelSkin(placed, slices), (mass * panelArea(placed.panel)) / area,
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
