import type { Body } from "../../model/design/geometry";
import { element, type MassElement } from "./element";
import type { Shapes } from "./shapes";
import { skinMass, skinWeighs } from "./skin";
import { pointMoments } from "./solids";
import { shiftedTo } from "./surface-elements";

/** Masses of a body: its weight spread over its surface, else computed from the skin with the allowance on it. `balance` moves the whole along x. */
export function bodyElements(body: Body, allowance: number, shapes: Shapes): MassElement[] {
  const elements = body.weight === undefined ? builtElements(body, 1 + allowance, shapes) : weighedElements(body, body.weight, shapes);
  return body.balance === undefined ? elements : shiftedTo(body.nose[0] + body.balance, elements);
}

function weighedElements(body: Body, weight: number, shapes: Shapes): MassElement[] {
  const shell = shapes.bodyShell(body);
  return element(body.path, "whole", shell.mass > 0 ? shell : pointMoments(body.nose), weight);
}

function builtElements(body: Body, factor: number, shapes: Shapes): MassElement[] {
  if (!skinWeighs(body.skin)) return [];
  const shell = shapes.bodyShell(body);
  const inside = shapes.bodyVolume(body);
  const { walls, fill } = skinMass(body.skin, shell.mass, inside.mass);
  return [
    ...element(body.path, "skin", shell, walls * factor),
    ...(fill > 0 ? element(body.path, "fill", inside, fill * factor) : []),
  ];
}
