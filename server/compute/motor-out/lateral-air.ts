import type { Surface } from "../../model/design/geometry";
import { steeringAxis, type SteeringAxis } from "../aircraft/steering";
import { sideDerivatives, type Side } from "../derivatives/side";
import type { LateralCoefficients } from "../derivatives/lateral";
import type { LateralLoads } from "../lattice/lateral-flow";
import type { LateralStrip } from "../lattice/lateral-strips";
import type { LateralBalance, LateralFrame } from "./balance";
import { turnedLoads, type TurnedLoads } from "./swirl";

/** What sideslip and controls do across the plane of symmetry, about one balance point. */
export interface LateralAir {
  readonly roll?: SteeringAxis;
  readonly yaw?: SteeringAxis;
  readonly strips: readonly LateralStrip[];
  /** At a lift coefficient, with some of `strips` in the slipstream of propellers. */
  readonly frame: (lift: number, washed?: readonly Washed[]) => Pick<LateralFrame, "area" | "span" | "sideslip" | "aileron" | "rudder">;
  /** What strips turned by themselves do, as those that meet a propeller's swirl are. */
  readonly turned: TurnedLoads;
  /** What sideslip and controls drag over dynamic pressure, m²: induced by what differs between the sides, and of the turned controls. */
  readonly dragArea: (held: Pick<LateralBalance, "sideslip" | "aileron" | "rudder">) => number;
}

/** A strip in a slipstream: by how much its share in it raises the speed and its square, over those of the flight. */
export interface Washed {
  readonly strip: number;
  readonly speed: number;
  readonly pressure: number;
}

/** Between two lifts everything is straight: the induced drag's part in the yaw is the product of the lift and the other loading. */
const straight = (none: LateralCoefficients, one: LateralCoefficients) => (lift: number): LateralCoefficients => {
  const at = (of: keyof LateralCoefficients) => none[of] + lift * (one[of] - none[of]);
  return { side: at("side"), roll: at("roll"), yaw: at("yaw") };
};

/**
 * Sideslip and controls from the same lattice, one solution for each. Surfaces with their controls. What stands in a slipstream has
 * its pressure with a control turned; its wind of a sideslip comes less from the side, so that only the speed counts (areas in the
 * slipstream at its pressure, as handbooks do: USAF DATCOM 4.6, from memory). The drag: that of the wake far downstream, the flow
 * of sideslip without its part along the chords, and turned plain flaps'.
 */
export function lateralAir(side: Side, surfaces: readonly Surface[], about: { readonly x: number; readonly z: number }): LateralAir {
  const { flow, reference: { area, span } } = side;
  const [roll, yaw] = (["roll", "yaw"] as const).map((way) => steeringAxis(flow, surfaces, way));
  const slip = straight(sideDerivatives(side, { lift: 0, ...about }).sideslip, sideDerivatives(side, { lift: 1, ...about }).sideslip);
  /** With what the slipstream adds on the strips in it. */
  const more = (still: LateralCoefficients, own: readonly LateralLoads[], washed: readonly Washed[], gain: "speed" | "pressure"): LateralCoefficients => {
    const sum = (of: keyof LateralLoads) => washed.reduce((total, one) => total + one[gain] * own[flow.strips[one.strip].solved][of], 0) / area;
    return { side: still.side + sum("side"), roll: still.roll + sum("roll") / span, yaw: still.yaw + sum("yaw") / span };
  };
  const control = (axis: SteeringAxis | undefined) => {
    if (!axis) return undefined;
    const { loads, circulation } = flow.bend(axis.slopes);
    const at = (lift: number): LateralCoefficients => {
      const { side: force, roll: rolling, yaw: yawing } = loads(lift * area, about);
      return { side: force / area, roll: rolling / (area * span), yaw: yawing / (area * span) };
    };
    const coefficients = straight(at(0), at(1));
    const own = flow.stripLoads(circulation, about);
    return {
      circulation,
      steering: (lift: number, washed: readonly Washed[]) => ({ ...more(coefficients(lift), own, washed, "pressure"), throw: axis.throw }),
    };
  };
  const [ailerons, rudders] = [control(roll), control(yaw)];
  const wind = flow.turn(() => [0, -1, 0]);
  const blown = flow.stripLoads(wind, about);
  const circulations = [wind, ailerons?.circulation, rudders?.circulation];
  const products = circulations.map((a) => circulations.map((b) => (a && b ? flow.drag(a, b) : 0)));
  return {
    ...(roll && { roll }), ...(yaw && { yaw }),
    strips: flow.strips, turned: turnedLoads(flow, about),
    frame: (lift, washed = []) => ({
      area, span, sideslip: more(slip(lift), blown, washed, "speed"),
      ...(ailerons && { aileron: ailerons.steering(lift, washed) }), ...(rudders && { rudder: rudders.steering(lift, washed) }),
    }),
    dragArea: ({ sideslip, aileron = 0, rudder = 0 }) => {
      const shares = [sideslip, aileron, rudder];
      const induced = shares.reduce((sum, a, i) => sum + shares.reduce((part, b, j) => part + a * b * products[i][j], 0), 0);
      return induced + (roll?.dragArea(aileron) ?? 0) + (yaw?.dragArea(rudder) ?? 0);
    },
  };
}
