import type { Body, Surface } from "../../model/design/geometry";
import type { LatticeSolution } from "../lattice/solve-lattice";
import { solveLatticeSteps } from "../lattice/solve-lattice";
import { referenceGeometry, type ReferenceGeometry } from "../planform/reference-geometry";
import { bodyMomentSlope } from "./body-moment";
import { coveredBy } from "./covered";

/** Lift and pitch of the whole design per radian, on the area and mean chord of its reference; controls fixed, propeller off. */
export interface PitchStability {
  /** x of the neutral point, m. */
  readonly x: number;
  /** The same in mean chords aft of the leading edge of the mean chord. */
  readonly chordShare: number;
  readonly liftSlope: number;
  /** Nose up, about the quarter point of the mean chord. */
  readonly momentSlope: number;
  /** x of the neutral point the surfaces alone would have, m. */
  readonly surfacesX: number;
  /** What each body adds to `momentSlope`. */
  readonly bodies: readonly { readonly path: string; readonly momentSlope: number }[];
  /** Lift and moment coefficients with the x axis along the flow, of the surfaces. */
  readonly zeroLift: number;
  readonly zeroMoment: number;
  /** At the tailplanes, per radian; absent without any. */
  readonly downwashSlope?: number;
  readonly reference: ReferenceGeometry;
  readonly lattice: LatticeSolution;
}

export interface Shape {
  readonly surfaces: readonly Surface[];
  readonly bodies: readonly Body[];
}

/** Undefined without a reference wing, or where its lattice has no solution. */
export function neutralPoint(shape: Shape): PitchStability | undefined {
  const steps = neutralPointSteps(shape);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps of a few milliseconds, so that a caller may do other things between, or give up. */
export function* neutralPointSteps({ surfaces, bodies }: Shape): Generator<void, PitchStability | undefined> {
  const reference = referenceGeometry(surfaces, bodies);
  if (!reference) return undefined;
  const { area, meanChord, meanChordX } = reference;
  const about = meanChordX + meanChord / 4;
  const lattice = yield* solveLatticeSteps(surfaces, { about, bodies });
  if (!lattice) return undefined;
  const shares: { path: string; momentSlope: number }[] = [];
  for (const body of bodies) {
    yield;
    const [, y, z] = body.nose;
    const slope = (x: number) => 1 + lattice.upwash([x, y, z + axisHeight(body, x)]);
    const moment = bodyMomentSlope(body, slope, coveredBy(body, surfaces, bodies));
    shares.push({ path: body.path, momentSlope: Number.isFinite(moment) ? moment / (area * meanChord) : 0 });
  }
  const liftSlope = lattice.liftSlope / area;
  const momentSlope = lattice.momentSlope / (area * meanChord) + shares.reduce((sum, share) => sum + share.momentSlope, 0);
  const x = about - (momentSlope / liftSlope) * meanChord;
  return {
    x, liftSlope, momentSlope, reference, lattice,
    chordShare: (x - meanChordX) / meanChord,
    surfacesX: lattice.neutralPoint,
    bodies: shares,
    zeroLift: lattice.zeroLift / area,
    zeroMoment: lattice.zeroMoment / (area * meanChord),
    ...(lattice.downwashSlope === undefined ? {} : { downwashSlope: lattice.downwashSlope }),
  };
}

/** Height of the middle of a body's section over its nose. */
export function axisHeight(body: Body, x: number): number {
  const from = x - body.nose[0];
  const after = body.stations.findIndex((station) => station.x >= from);
  if (after <= 0) return body.stations[after === 0 ? 0 : body.stations.length - 1].z;
  const [a, b] = [body.stations[after - 1], body.stations[after]];
  return a.z + ((from - a.x) / (b.x - a.x)) * (b.z - a.z);
}
