import type { Surface } from "../../model/design/geometry";
import type { Elements } from "./elements";
import { influenceSteps, inPlane } from "./influence";
import { layLattice, type Lattice, type LatticeOptions } from "./lattice";
import { factorSteps, solveFactored } from "./lu";
import { lateralStrips, oddPart, oddStripLoads, type LateralStrip } from "./lateral-strips";
import { crossDrag, oddDrag, wakeOf, type Wake } from "./wake-drag";

/** Velocity of the air past the airframe over flight speed, at a point: x aft, y right, z up. */
export type Onset = (x: number, y: number, z: number) => readonly [u: number, v: number, w: number];

/** Loads over dynamic pressure, right and right wing down and nose right positive: m², m³, m³. */
export interface LateralLoads {
  readonly side: number;
  readonly roll: number;
  readonly yaw: number;
}

/** What surfaces bent out of their shape do, per unit. */
export interface Bent {
  /** While the whole lifts `lift` m², about (x, 0, z). */
  readonly loads: (lift: number, about: { readonly x: number; readonly z: number }) => LateralLoads;
  /** Circulation of the solved horseshoes, over flight speed, m. */
  readonly circulation: Float64Array;
}

/** A lattice ready for flow that differs between the sides, x along the flow. */
export interface LateralFlow {
  /**
   * What a small unsymmetrical change of the onset adds to the loads about (x, 0, z) while the whole lifts `lift` m². The
   * yawing moment has the part by induced drag.
   */
  readonly respond: (change: Onset, lift: number, about: { readonly x: number; readonly z: number }) => LateralLoads;
  /** The same for any lift: a change of the onset is solved for once. */
  readonly answer: (change: Onset) => Bent["loads"];
  readonly unknowns: number;
  /** All of them, images too. */
  readonly strips: readonly LateralStrip[];
  /** Control points along each strip's chord. */
  readonly rows: number;
  /**
   * What slopes dz/dx towards each strip's normal at its control points (`strips` × `rows`) add; where one side stands for both,
   * their part that differs between the sides.
   */
  readonly bend: (slopes: Float64Array) => Bent;
  /** What a small change of the onset does by itself, as circulation. */
  readonly turn: (change: Onset) => Float64Array;
  /** Of such a circulation, on each solved strip and likewise on its image, without the induced drag. */
  readonly stripLoads: (circulation: Float64Array, about: { readonly x: number; readonly z: number }) => readonly LateralLoads[];
  /** The part of the induced drag over dynamic pressure, m², that is the product of two such circulations: a · drag · b. */
  readonly drag: (a: Float64Array, b: Float64Array) => number;
}

/**
 * Lays and factors a lattice of all surfaces with what stands in the plane of symmetry: the right side with images of equal
 * and of opposite strength, or everything where the design is not symmetric. Yields between steps of a few milliseconds.
 * Undefined without a lift slope.
 */
export function* lateralFlowSteps(surfaces: readonly Surface[], options: LatticeOptions): Generator<void, LateralFlow | undefined> {
  const lattice = layLattice(surfaces, { ...options, antisymmetric: true });
  if (!lattice) return undefined;
  const e = lattice.elements;
  yield;
  const [same, opposite] = yield* influenceSteps(lattice, lattice.symmetric ? [1, -1] : [1]);
  const even = yield* factorSteps(same, e.count);
  const odd = opposite ? yield* factorSteps(opposite, e.count) : even;
  if (!even || !odd) return undefined;
  const unit = solveFactored(even, e.nz.map((nz) => -nz));
  const zero = solveFactored(even, e.slope);
  const liftOf = (strength: Float64Array) => strength.reduce((sum, g, i) => sum + share(lattice, i) * 2 * g * (e.by[i] - e.ay[i]), 0);
  const [slope, none] = [liftOf(unit), liftOf(zero)];
  if (!(slope > 0) || !Number.isFinite(none)) return undefined;
  const wake = wakeOf(lattice);
  const strips = lateralStrips(lattice, surfaces);
  const angleAt = (lift: number) => (lift - none) / slope;
  const steadyAt = (angle: number) => unit.map((g, i) => g * angle + zero[i]);
  const answer = (change: Onset): Bent["loads"] => {
    const still = solveFactored(odd, e.slope.map((slope, i) => normalwash(e, change, i, slope)));
    // Per radian of the steady angle, by which the surfaces stand otherwise in what flows along them.
    const turning = solveFactored(odd, e.nz.map((nz, i) => -change(e.px[i], e.py[i], e.pz[i])[0] * nz));
    return (lift, about) => {
      const angle = angleAt(lift);
      return loads(lattice, wake, steadyAt(angle), still.map((g, i) => g + angle * turning[i]), change, about);
    };
  };
  return {
    unknowns: e.count,
    strips,
    rows: e.rows,
    bend: (slopes) => {
      const circulation = solveFactored(odd, oddPart(lattice, strips, slopes));
      return { circulation, loads: (lift, about) => loads(lattice, wake, steadyAt(angleAt(lift)), circulation, still, about) };
    },
    turn: (change) => solveFactored(odd, e.slope.map((_, i) => normalwash(e, change, i, 0))),
    stripLoads: (circulation, about) => oddStripLoads(lattice, circulation, about),
    drag: (a, b) => oddDrag(lattice, wake, a, b),
    answer,
    respond: (change, lift, about) => answer(change)(lift, about),
  };
}

const nowhere = [0, 0, 0] as const;
const still: Onset = () => nowhere;

/** Both sides of a symmetric design move alike; what stands in the plane is there once. */
const share = ({ symmetric, elements }: Lattice, i: number): number => (symmetric && !inPlane(elements, i) ? 2 : 1);

/** Against the normal, whose x is what `slope` (dz/dx against the stream) takes off. */
function normalwash(e: Elements, change: Onset, i: number, slope: number): number {
  const [u, v, w] = change(e.px[i], e.py[i], e.pz[i]);
  return u * slope - v * e.ny[i] - w * e.nz[i];
}

/** First-order change of Kutta and Joukowski's force on the bound lines, and of the induced drag. */
function loads(
  lattice: Lattice, wake: Wake, steady: Float64Array, turned: Float64Array, change: Onset, about: { readonly x: number; readonly z: number },
): LateralLoads {
  const { elements: e } = lattice;
  const sum = { side: 0, roll: 0, yaw: 0 };
  for (let i = 0; i < e.count; i++) {
    const x = (e.ax[i] + e.bx[i]) / 2, y = (e.ay[i] + e.by[i]) / 2, z = (e.az[i] + e.bz[i]) / 2;
    const dx = e.bx[i] - e.ax[i], dy = e.by[i] - e.ay[i], dz = e.bz[i] - e.az[i];
    const [u, v, w] = change === still ? nowhere : change(x, y, z);
    const both = 2 * share(lattice, i);
    const aft = both * steady[i] * (v * dz - w * dy);
    const right = both * (steady[i] * (w * dx - u * dz) - turned[i] * dz);
    const up = both * (steady[i] * (u * dy - v * dx) + turned[i] * dy);
    sum.side += right;
    sum.roll += (z - about.z) * right - y * up;
    sum.yaw += y * aft - (x - about.x) * right;
  }
  return { ...sum, yaw: sum.yaw + crossDrag(lattice, wake, steady, turned) };
}
