/**
 * Mean friction coefficients of one wetted side of a flat plate by the Reynolds number of its length (H. Schlichting,
 * Boundary-Layer Theory): Blasius for laminar flow, Prandtl and Schlichting for turbulent.
 */
export const laminarFriction = (reynolds: number): number => 1.328 / Math.sqrt(bounded(reynolds));
export const turbulentFriction = (reynolds: number): number => 0.455 / Math.log10(bounded(reynolds)) ** 2.58;

/** Fully rough, by length over the height of sand that is as rough (Schlichting). From a hundred; below it as there. */
export const roughFriction = (lengthBySand: number): number => (1.89 + 1.62 * Math.log10(Math.max(lengthBySand, 100))) ** -2.5;

/** Reynolds number of the laminar run of a smooth plate in an ordinary stream (Schlichting). */
export const naturalTransition = 5e5;

/** Below a thousand boundary layers are no longer thin: drag areas are held there, so that none grows beyond bounds at rest. */
const least = 1e3;
const bounded = (reynolds: number): number => (reynolds > least ? reynolds : least);

export interface Surface {
  /** Reynolds number of the laminar run; 0: turbulent from the front. */
  readonly transition: number;
  /** Length over the height of sand as rough as the surface; smooth when absent. */
  readonly lengthBySand?: number;
}

/**
 * A plate laminar up to transition and turbulent behind: the turbulent friction of the whole less what its front would
 * have had more than laminar (L. Prandtl 1927). For a laminar run of 500,000 that is the usual A/Re with A = 1614, which
 * joins laminar friction without a step. A rough plate has the larger of smooth turbulent and fully rough friction.
 */
export function plateFriction(reynolds: number, { transition, lengthBySand }: Surface): number {
  const re = bounded(reynolds);
  if (re <= transition) return laminarFriction(re);
  const turbulent = (at: number) =>
    Math.max(turbulentFriction(at), lengthBySand === undefined ? 0 : roughFriction((lengthBySand * at) / re));
  if (!(transition > 0)) return turbulent(re);
  const saved = transition * Math.max(0, turbulent(transition) - laminarFriction(transition));
  return Math.max(laminarFriction(re), turbulent(re) - saved / re);
}
