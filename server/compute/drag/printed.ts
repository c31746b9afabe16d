import type { Skin } from "../../model/design/geometry";
import { reynoldsOf, type Flow } from "./flow";
import { plateFriction } from "./friction";

/** Height of a printed layer where nobody says, m. Common practice, no source. */
export const usualLayer = 0.2e-3;

/**
 * Share of the layer height that counts as height of sand: layers end in half circles beside each other, grooves as deep as
 * half a layer, and sand as high as these are deep. Common practice, no source.
 */
const sandShare = 0.5;

/**
 * Speed × height / kinematic viscosity from which ridges across the flow begin to move transition forward, and at which it
 * has reached the nose. 200 is about what spanwise wires need (A. M. O. Smith, D. W. Clutter, Journal of the Aeronautical
 * Sciences 26, 1959; from memory, medium); grains need 600 (A. L. Braslow). The start, half of it, has no source.
 */
const trips = { from: 100, to: 200 };

/** Share of a smooth section's wetted surface with a turbulent layer. Common practice, no source. */
const smoothShare = 0.5;

export interface Roughness {
  /** Height of sand as rough, m. */
  readonly sand: number;
  /** Share of the surface, from the back, with a turbulent layer. */
  readonly turbulent: number;
  /** Friction over that of the smooth surface: a factor on the profile drag of a section. At least 1. */
  readonly factor: number;
  /** What it adds to the friction coefficient of each face. */
  readonly added: number;
}

/**
 * What layer lines do to the friction of a printed surface `length` m long. Taken as lying across the flow, which is the
 * worst: so they lie on a hull printed standing, and on a wing printed on its edge; on a panel printed standing on its root they lie along
 * the flow and cost next to nothing. How a piece stood on the bed is not known. Ridges that happen to trip a laminar bubble
 * and save drag are not modelled.
 */
export function printedRoughness(flow: Flow, length: number, layer = usualLayer): Roughness {
  const sand = sandShare * layer;
  const reynolds = reynoldsOf(flow, length);
  const turbulent = smoothShare + (1 - smoothShare) * forwardShare(flow, layer);
  const smooth = plateFriction(reynolds, { transition: (1 - smoothShare) * reynolds });
  const rough = plateFriction(reynolds, { transition: (1 - turbulent) * reynolds, lengthBySand: length / sand });
  return { sand, turbulent, factor: Math.max(1, rough / smooth), added: Math.max(0, rough - smooth) };
}

/** How far transition has moved from its place on a smooth surface to the front: 0 to 1. */
export function forwardShare(flow: Flow, layer = usualLayer): number {
  const height = reynoldsOf(flow, sandShare * layer);
  return Math.min(1, Math.max(0, (height - trips.from) / (trips.to - trips.from)));
}

/** Height of sand as rough as a printed wall, m; undefined for another. */
export const sandOf = (skin: Skin | undefined, layer = usualLayer): number | undefined => (isPrinted(skin) ? sandShare * layer : undefined);

/** A wall of some thickness of a material by volume; film and cloth are by area. */
export const isPrinted = (skin: Skin | undefined): boolean => skin?.wall !== undefined && skin.density !== undefined && skin.arealDensity === undefined;
