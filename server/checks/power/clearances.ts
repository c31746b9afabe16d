import { convexDistance } from "../../compute/convex/distance";
import { along, bodyPieces, cylinder, dot, hull, thinPanel, type Convex } from "../../compute/convex/shapes";
import { discAbove, discClearance, discGap, discOf, type Disc } from "../../compute/propeller/disc";
import type { Vec3 } from "../../model/design/geometry";
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

/** Clearances of all propellers of a loading; those that are surely over `within` may be left out. Other powerplants may be tried. */
export function clearances(set: FigureSet, within: number, powerplants: readonly Plant[] = nominal(set).powerplants): Clearance[] {
  const { bodies, surfaces, wheels } = nominal(set);
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
    ...hulls.flatMap(({ path, pieces }): Clearance[] => {
      const close = near(disc, pieces, within);
      return close.length === 0 || sitsOn(plant, disc, pieces) ? [] : [{ plant: plant.path, what: "body", other: path, distance: nearest(disc, close) }];
    }),
    ...panels.flatMap(({ path, pieces }): Clearance[] => {
      const close = near(disc, pieces, within);
      return close.length === 0 ? [] : [{ plant: plant.path, what: "surface", other: path, distance: nearest(disc, close) }];
    }),
    ...discs.slice(i + 1).map((other): Clearance => ({ plant: plant.path, what: "disc", other: other.plant.path, distance: discGap(disc, other.disc) })),
  ]);
}

/** The pieces that a look along the shaft and across it can't tell to be farther off. */
function near({ hub, axis, radius, depth }: Disc, pieces: readonly Convex[], within: number): Convex[] {
  const swept = cylinder(hub, axis, radius, depth);
  const back = (u: Vec3): Vec3 => [-u[0], -u[1], -u[2]];
  const gap = (piece: Convex, u: Vec3) => dot(u, piece(back(u))) - dot(u, swept(u));
  return pieces.filter((piece) => [axis, back(axis), ...across].every((u) => gap(piece, u) <= within));
}

const across: readonly Vec3[] = [[0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]];

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
