import type { Quantity } from "../../grammar/units/quantity";
import type { Design } from "../model/design/design";
import type { Body, Surface } from "../model/design/geometry";

/** The outside of an aircraft, without any weight: all that planform and aerodynamics rest on. */
export interface Shape<N = number> {
  readonly surfaces: readonly Surface<N>[];
  readonly bodies: readonly Body<N>[];
}

/** What a change of weights leaves alone, so that what was computed from it can be found again. */
export function shapeOf(design: Design<Quantity>): Shape<Quantity> {
  return {
    surfaces: design.surfaces.map((surface) => ({
      ...surface, weight: undefined, balance: undefined, skin: undefined, spars: [], controls: [],
      halves: surface.halves.map((half) => ({ ...half, panels: half.panels.map((panel) => ({ ...panel, weight: undefined })) })),
    })),
    bodies: design.bodies.map((body) => ({ ...body, weight: undefined, balance: undefined, skin: undefined })),
  };
}
