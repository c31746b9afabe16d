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

const origin = { x: 0, z: 0 };

const moved = ({ side, roll, yaw }: LateralLoads, { x, z }: typeof origin): LateralLoads => ({ side, roll: roll - z * side, yaw: yaw + x * side });

interface Steered {
  readonly axis: SteeringAxis;
  readonly circulation: Float64Array;
  /** Without lift, and with 1 m² of it. */
  readonly loads: readonly [none: LateralLoads, one: LateralLoads];
  /** Of each solved strip. */
  readonly own: readonly LateralLoads[];
}

/** A shape with its controls, ready for any balance point: moments about the design's origin. */
export interface SteeredSide {
  readonly side: Side;
  readonly roll?: Steered;
  readonly yaw?: Steered;
  /** By the wind of a sideslip, of each solved strip. */
  readonly blown: readonly LateralLoads[];
  /** Induced drag of pairs: sideslip, aileron, rudder. */
  readonly products: readonly (readonly number[])[];
  readonly turned: TurnedLoads;
}

/** Sideslip and controls from the same lattice, one solution for each. Surfaces with their controls. */
export function steeredSide(side: Side, surfaces: readonly Surface[]): SteeredSide {
  const { flow } = side;
  const [roll, yaw] = (["roll", "yaw"] as const).map((way): Steered | undefined => {
    const axis = steeringAxis(flow, surfaces, way);
    if (!axis) return undefined;
    const { loads, circulation } = flow.bend(axis.slopes);
    return { axis, circulation, loads: [loads(0, origin), loads(1, origin)], own: flow.stripLoads(circulation, origin) };
  });
  const wind = flow.turn(() => [0, -1, 0]);
  const circulations = [wind, roll?.circulation, yaw?.circulation];
  const products = circulations.map((a) => circulations.map((b) => (a && b ? flow.drag(a, b) : 0)));
  return { side, ...(roll && { roll }), ...(yaw && { yaw }), blown: flow.stripLoads(wind, origin), products, turned: turnedLoads(flow, origin) };
}

/**
 * Sideslip and controls about a balance point. What stands in a slipstream has its pressure with a control turned; its wind of a sideslip
 * comes less from the side, so that only the speed counts (areas in the slipstream at its pressure, as handbooks do: USAF DATCOM 4.6,
 * from memory). The drag: that of the wake far downstream, the flow of sideslip without its part along the chords, and turned plain flaps'.
 */
export function lateralAir({ side, roll, yaw, blown, products, turned }: SteeredSide, { x, z }: { readonly x: number; readonly z: number }): LateralAir {
  const { flow, reference: { area, span } } = side;
  const about = { x, z };
  const coefficients = (loads: LateralLoads): LateralCoefficients => {
    const own = moved(loads, about);
    return { side: own.side / area, roll: own.roll / (area * span), yaw: own.yaw / (area * span) };
  };
  const slip = straight(sideDerivatives(side, { lift: 0, ...about }).sideslip, sideDerivatives(side, { lift: 1, ...about }).sideslip);
  /** With what the slipstream adds on the strips in it. */
  const more = (still: LateralCoefficients, own: readonly LateralLoads[], washed: readonly Washed[], gain: "speed" | "pressure"): LateralCoefficients => {
    const sum = { side: 0, roll: 0, yaw: 0 };
    for (const one of washed) {
      const loads = own[flow.strips[one.strip].solved];
      sum.side += one[gain] * loads.side;
      sum.roll += one[gain] * loads.roll;
      sum.yaw += one[gain] * loads.yaw;
    }
    const added = coefficients(sum);
    return { side: still.side + added.side, roll: still.roll + added.roll, yaw: still.yaw + added.yaw };
  };
  const steering = (control: Steered | undefined) => {
    if (!control) return undefined;
    const { loads: [none, one], own, axis } = control;
    // Per lift coefficient: its area of lift is `area`.
    const whole = { side: none.side + area * (one.side - none.side), roll: none.roll + area * (one.roll - none.roll), yaw: none.yaw + area * (one.yaw - none.yaw) };
    const at = straight(coefficients(none), coefficients(whole));
    return (lift: number, washed: readonly Washed[]) => ({ ...more(at(lift), own, washed, "pressure"), throw: axis.throw });
  };
  const [aileron, rudder] = [steering(roll), steering(yaw)];
  return {
    ...(roll && { roll: roll.axis }), ...(yaw && { yaw: yaw.axis }),
    strips: flow.strips, turned: (...what) => moved(turned(...what), about),
    frame: (lift, washed = []) => ({
      area, span, sideslip: more(slip(lift), blown, washed, "speed"),
      ...(aileron && { aileron: aileron(lift, washed) }), ...(rudder && { rudder: rudder(lift, washed) }),
    }),
    dragArea: (held) => {
      const shares = [held.sideslip, held.aileron ?? 0, held.rudder ?? 0];
      const induced = shares.reduce((sum, a, i) => sum + shares.reduce((part, b, j) => part + a * b * products[i][j], 0), 0);
      return induced + (roll?.axis.dragArea(shares[1]) ?? 0) + (yaw?.axis.dragArea(shares[2]) ?? 0);
    },
  };
}
