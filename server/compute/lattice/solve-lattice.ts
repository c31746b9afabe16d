import type { Surface, SurfaceKind, Vec3 } from "../../model/design/geometry";
import { downwashSlope, tailBlock } from "./downwash";
import { influenceSteps } from "./influence";
import { layLattice, type Lattice, type LatticeOptions } from "./lattice";
import { loadsOf, type Response } from "./loads";
import { factorSteps, solveFactored, type Factored } from "./lu";
import { perStrip, stripLoads, type StripLoad } from "./strip-loads";
import { upwashBy } from "./upwash";


/** All lifting surfaces in flow along x at small angles, linear in the angle of attack. Forces are over dynamic pressure. */
export interface LatticeSolution {
  /** m² per radian. */
  readonly liftSlope: number;
  /** m³ per radian, nose up, about `about`. */
  readonly momentSlope: number;
  readonly about: number;
  /** x of the neutral point of the surfaces alone, m. */
  readonly neutralPoint: number;
  /** With the x axis along the flow: by twist, incidence and camber; m², m³. */
  readonly zeroLift: number;
  readonly zeroMoment: number;
  /** Every strip of every surface, both sides. */
  readonly strips: readonly StripLoad[];
  /** Upward velocity over flight speed that the surfaces cause at a point, per radian of angle of attack. */
  readonly upwash: (point: Vec3) => number;
  /** How much the angle at the tailplanes falls short, per radian: 1 less their lift over what they have alone. */
  readonly downwashSlope?: number;
  /** The loads for any slope dz/dx of the surface against the stream at the control points (of the solved side). */
  readonly respond: (slope: (at: ControlPoint) => number) => Response;
  /** With the x axis along the flow: by twist, incidence and camber. */
  readonly zero: Response;
  /** Circulation of each of `strips` out of that of the horseshoes, over flight speed, m. */
  readonly stripCirculation: (of: Response) => Float64Array;
  /** Upward velocity over flight speed that circulations cause at a point. */
  readonly upwashOf: (of: Response) => (point: Vec3) => number;
  /** Control points along each strip's chord. */
  readonly rows: number;
  readonly symmetric: boolean;
  readonly unknowns: number;
  /** Paths of surfaces in the plane of symmetry, which take no part. */
  readonly leftOut: readonly string[];
}

export interface ControlPoint {
  readonly path: string;
  readonly kind: SurfaceKind;
  /** Its place in `LatticeSolution.strips`, and among the rows along the chord. */
  readonly strip: number;
  readonly row: number;
  readonly point: Vec3;
  /** Share of the local chord. */
  readonly chord: number;
  /** Normal across the stream, (0, ny, nz). */
  readonly normal: readonly [ny: number, nz: number];
}

/**
 * Vortex lattice over all surfaces together: horseshoes with legs along x, rows and strips spaced by cosines, one side with
 * its image where the design is symmetric. Undefined without lifting area, or where two surfaces fill the same space.
 * Equations: J. J. Bertin, M. L. Smith, Aerodynamics for Engineers; spacing: C. E. Lan, J. Aircraft 11, 1974, p. 518.
 */
export function solveLattice(surfaces: readonly Surface[], options: LatticeOptions = {}): LatticeSolution | undefined {
  const steps = solveLatticeSteps(surfaces, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps of a few milliseconds, so that a caller may do other things between, or give up. */
export function* solveLatticeSteps(surfaces: readonly Surface[], options: LatticeOptions = {}): Generator<void, LatticeSolution | undefined> {
  const lattice = layLattice(surfaces, options);
  if (!lattice) return undefined;
  yield;
  const [influence] = yield* influenceSteps(lattice, [1]);
  const tail = tailBlock(lattice, surfaces, influence);
  const factored = yield* factorSteps(influence, lattice.elements.count);
  if (!factored) return undefined;
  yield;
  return solutionOf(lattice, surfaces, factored, tail, options.about ?? 0);
}

function solutionOf(
  lattice: Lattice, surfaces: readonly Surface[], factored: Factored, tail: ReturnType<typeof tailBlock>, about: number,
): LatticeSolution | undefined {
  const { elements: e } = lattice;
  const loads = (circulation: Float64Array) => loadsOf(lattice, circulation, about);
  const unit = loads(solveFactored(factored, e.nz.map((nz) => -nz)));
  const zero = loads(solveFactored(factored, e.slope));
  if (!(unit.lift > 0) || ![unit.moment, zero.lift, zero.moment].every(Number.isFinite)) return undefined;
  const points = controlPoints(lattice, surfaces);
  const downwash = tail && downwashSlope(lattice, tail, unit.circulation);
  return {
    liftSlope: unit.lift,
    momentSlope: unit.moment,
    about,
    neutralPoint: about - unit.moment / unit.lift,
    zeroLift: zero.lift,
    zeroMoment: zero.moment,
    strips: stripLoads(lattice, surfaces, unit.circulation, zero.circulation),
    upwash: upwashBy(lattice, unit.circulation),
    ...(downwash === undefined ? {} : { downwashSlope: downwash }),
    respond: (slope) => loads(solveFactored(factored, points.map(slope))),
    zero,
    stripCirculation: ({ circulation }) => {
      const solved = perStrip(lattice, circulation);
      return lattice.symmetric ? Float64Array.from({ length: 2 * solved.length }, (_, i) => solved[i >> 1]) : solved;
    },
    upwashOf: ({ circulation }) => upwashBy(lattice, circulation),
    rows: e.rows,
    symmetric: lattice.symmetric,
    unknowns: e.count,
    leftOut: [...new Set(lattice.leftOut.map(({ surface }) => surfaces[surface].path))],
  };
}

function controlPoints({ elements: e, strips, pieces, symmetric }: Lattice, surfaces: readonly Surface[]): ControlPoint[] {
  return Array.from({ length: e.count }, (_, i) => {
    const s = Math.floor(i / e.rows);
    const strip = strips[s];
    const { path, kind } = surfaces[pieces[strip.piece].surface];
    return {
      path, kind,
      strip: symmetric ? 2 * s : s,
      row: i % e.rows,
      point: [e.px[i], e.py[i], e.pz[i]],
      chord: strip.middle.chord > 0 ? (e.px[i] - strip.middle.x) / strip.middle.chord : 0,
      normal: [e.ny[i], e.nz[i]],
    };
  });
}
