import type { StripLoad } from "../lattice/strip-loads";
import type { PitchStability } from "../stability/neutral-point";
import { modeAt, modeOf, type AirBasis, type AirShape } from "./air-basis";
import { bodySlope } from "./body-slope";
import { products } from "./mode-products";

/** Where a strip's middle, which its control points stand on, lies along the half as built: 0 root, 1 tip. It need not halve the strip. */
export function middleAlong({ y, z, ends: [[ya, za], [yb, zb]], along: [a, b] }: StripLoad): number {
  const [across, up] = [yb - ya, zb - za];
  return a + (((y - ya) * across + (z - za) * up) / (across ** 2 + up ** 2)) * (b - a);
}

/** How far a strip's chord is turned nose up, rad, for a turn of 1. */
export type Turn = (strip: StripLoad) => number;

/** The basis of the same shape with chords turned by a share of a turn. Exact: the lattice takes twist and incidence as slopes alone. */
export type Turned = (share: number) => AirBasis;

/**
 * What an incidence or a washout besides that of the design does, at the cost of one solution of the factored lattice: `pitch`,
 * `basis` and `shape` are those of the design as it is.
 */
export function turning(pitch: PitchStability, basis: AirBasis, { surfaces, bodies }: AirShape, turn: Turn): Turned {
  const { lattice } = pitch;
  const turns = lattice.strips.map(turn);
  const answer = lattice.respond(({ strip }) => -turns[strip]);
  const slopes = bodies.map((body) => bodySlope(body, surfaces, bodies));
  const { circulation, lift, moment } = modeOf(lattice, answer, slopes, false);
  return (share) => {
    const rest = basis.modes[modeAt.rest];
    const turned = {
      circulation: rest.circulation.map((own, i) => own + share * circulation[i]), lift: rest.lift + share * lift, moment: rest.moment + share * moment,
    };
    const modes = basis.modes.map((mode, m) => (m === modeAt.rest ? turned : mode));
    return { ...basis, modes, products: products(basis.strips, modes) };
  };
}
