import type { Body, Load, Member, Surface } from "../../model/design/geometry";
import { scaled, type Moments } from "./moments";

/** What the mass computation needs of a design. */
export interface MassParts<N = number> {
  readonly surfaces: readonly Surface<N>[];
  readonly bodies: readonly Body<N>[];
  readonly members: readonly Member<N>[];
  readonly loads: readonly Load<N>[];
  /** Share added to computed structural weights. */
  readonly allowance: N;
}

/**
 * What a mass was had from: computed from a `skin` (its walls, and what fills them), a spar's section; or as written
 * for a panel, a whole surface or body, a strut or wire, a load.
 */
export type MassKind = "skin" | "fill" | "spar" | "panel" | "whole" | "member" | "load";

/** A part of the airframe that weighs something, with its mass (kg) and how it is spread. */
export interface MassElement {
  readonly path: string;
  readonly kind: MassKind;
  readonly moments: Moments;
}

/** A shape at unit density (or unit mass) given a mass. No element where that is not a number or the shape is nothing. */
export function element(path: string, kind: MassKind, shape: Moments, mass: number): MassElement[] {
  if (!(shape.mass > 0) || !Number.isFinite(mass)) return [];
  return [{ path, kind, moments: scaled(shape, mass / shape.mass) }];
}

export const totalMass = (elements: readonly MassElement[]): number => elements.reduce((sum, e) => sum + e.moments.mass, 0);
