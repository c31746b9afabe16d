import type { LateralFlow, LateralLoads, Onset } from "../lattice/lateral-flow";
import type { ReferenceGeometry } from "../planform/reference-geometry";

/** Change of the coefficients of side force (right), rolling (right wing down) and yawing moment (nose right). */
export interface LateralCoefficients {
  readonly side: number;
  readonly roll: number;
  readonly yaw: number;
}

/** Moments about the balance point on area and span. */
export interface LateralDerivatives {
  /** Per radian of sideslip, wind from the right. */
  readonly sideslip: LateralCoefficients;
  /** Per pb/2V, right wing down. */
  readonly rollRate: LateralCoefficients;
  /** Per rb/2V, nose right. */
  readonly yawRate: LateralCoefficients;
}

export interface FlightPoint {
  readonly lift: number;
  /** The balance point, m; it is taken to lie in the plane of symmetry. */
  readonly x: number;
  readonly z: number;
}

/** Flows of which each motion is a sum, so that one answer to each serves every balance point. */
const flows = {
  across: () => [0, 1, 0], acrossByHeight: (_, __, z) => [0, z, 0], acrossByLength: (x) => [0, x, 0],
  upByBreadth: (_, y) => [0, 0, y], aftByBreadth: (_, y) => [y, 0, 0],
} satisfies Readonly<Record<string, Onset>>;

type Flow = keyof typeof flows;

/** Over the wing's area: answers are squares in the lift, through these. */
const lifts = [0, 0.5, 1] as const;

/**
 * Sideslip, roll and yaw derivatives of all surfaces at any lift coefficient and balance point, from a vortex lattice in the linear onset
 * flow of each motion (definitions as in R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 3). Yields between solutions.
 */
export function* lateralSteps(flow: LateralFlow, { area, span }: ReferenceGeometry): Generator<void, (at: FlightPoint) => LateralDerivatives> {
  const answers = new Map<Flow, readonly LateralLoads[]>();
  for (const name of Object.keys(flows) as Flow[]) {
    yield;
    const answer = flow.answer(flows[name]);
    answers.set(name, lifts.map((lift) => answer(lift * area, { x: 0, z: 0 })));
  }
  const rate = 2 / span;
  return ({ lift, x, z }) => {
    const [none, half, whole] = [(1 - lift) * (1 - 2 * lift), 4 * lift * (1 - lift), lift * (2 * lift - 1)];
    const coefficients = (shares: Readonly<Partial<Record<Flow, number>>>): LateralCoefficients => {
      let [side, roll, yaw] = [0, 0, 0];
      for (const name in shares) {
        const share = shares[name as Flow]!;
        const [a, b, c] = answers.get(name as Flow)!;
        side += share * (none * a.side + half * b.side + whole * c.side);
        roll += share * (none * a.roll + half * b.roll + whole * c.roll);
        yaw += share * (none * a.yaw + half * b.yaw + whole * c.yaw);
      }
      return { side: side / area, roll: (roll - z * side) / (area * span), yaw: (yaw + x * side) / (area * span) };
    };
    return {
      sideslip: coefficients({ across: -1 }),
      rollRate: coefficients({ across: rate * z, acrossByHeight: -rate, upByBreadth: rate }),
      yawRate: coefficients({ across: -rate * x, acrossByLength: rate, aftByBreadth: -rate }),
    };
  };
}
