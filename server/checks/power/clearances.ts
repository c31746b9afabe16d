import { convexDistance } from "../../compute/convex/distance";
import { along, bodyPieces, hull, thinPanel, type Convex } from "../../compute/convex/shapes";
import { discAbove, discClearance, discGap, discOf, type Disc } from "../../compute/propeller/disc";
import type { FigureSet } from "../../figures/figure-set";
import { nominal } from "../readiness";
import { grounds } from "./ground";
import type { Plant } from "./parts";

/** How far a propeller's disc is from something, m; not over 0 where it strikes. */
export interface Clearance {
  readonly plant: string;
  readonly what: "ground" | "body" | "surface" | "disc";
  /** What it is near to: a path, or how it stands. */
  readonly other: string;
  readonly distance: number;
}

/** All clearances of all propellers of a loading. */
export function clearances(set: FigureSet): Clearance[] {
  const { powerplants, bodies, surfaces, wheels } = nominal(set);
  const discs = powerplants.flatMap((plant) => {
    const disc = discOf(plant);
    return disc ? [{ plant, disc }] : [];
  });
  const hulls = bodies.map((body) => ({ path: body.path, pieces: bodyPieces(body) }));
  const panels = surfaces.map(({ path, halves }) => ({ path, pieces: halves.flatMap((half) => half.panels.map(thinPanel)) }));
  const stands = grounds(wheels.map(({ contact }) => contact), set.value("cg.x")?.value ?? middle(wheels.map(({ contact }) => contact[0])));
  return discs.flatMap(({ plant, disc }, i) => [
    ...stands.map(({ point, up, tailUp }): Clearance =>
      ({ plant: plant.path, what: "ground", other: tailUp ? "with the tail up" : "as it stands", distance: discAbove(disc, point, up) })),
    ...hulls.filter(({ pieces }) => !sitsOn(plant, disc, pieces)).map(({ path, pieces }): Clearance => ({ plant: plant.path, what: "body", other: path, distance: nearest(disc, pieces) })),
    ...panels.map(({ path, pieces }): Clearance => ({ plant: plant.path, what: "surface", other: path, distance: nearest(disc, pieces) })),
    ...discs.slice(i + 1).map((other): Clearance => ({ plant: plant.path, what: "disc", other: other.plant.path, distance: discGap(disc, other.disc) })),
  ]);
}

const nearest = (disc: Disc, pieces: readonly Convex[]): number => Math.min(...pieces.map((piece) => discClearance(disc, piece)));

const middle = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;

/** How far along the shaft a mount reaches, and how near to it a body must come to be the one it sits on: common practice, no source. m */
const mountLength = 0.1;
const mountGap = 0.02;

/** Does the shaft, from the hub to where its motor is, run into this body? */
function sitsOn({ pusher }: Plant, { hub, axis }: Disc, pieces: readonly Convex[]): boolean {
  const shaft = hull([hub, along(hub, pusher ? mountLength : -mountLength, axis)]);
  return pieces.some((piece) => convexDistance(shaft, piece) <= mountGap);
}
