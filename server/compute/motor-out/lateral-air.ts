import type { Surface } from "../../model/design/geometry";
import { steeringAxis, type SteeringAxis } from "../aircraft/steering";
import { sideDerivatives, type Side } from "../derivatives/side";
import type { LateralCoefficients } from "../derivatives/lateral";
import type { LateralBalance, LateralFrame } from "./balance";

/** What sideslip and controls do across the plane of symmetry, about one balance point. */
export interface LateralAir {
  readonly roll?: SteeringAxis;
  readonly yaw?: SteeringAxis;
  /** At a lift coefficient. */
  readonly frame: (lift: number) => Pick<LateralFrame, "area" | "span" | "sideslip" | "aileron" | "rudder">;
  /** What sideslip and controls drag over dynamic pressure, m²: induced by what differs between the sides, and of the turned controls. */
  readonly dragArea: (held: Pick<LateralBalance, "sideslip" | "aileron" | "rudder">) => number;
}

/** Between two lifts everything is straight: the induced drag's part in the yaw is the product of the lift and the other loading. */
const straight = (none: LateralCoefficients, one: LateralCoefficients) => (lift: number): LateralCoefficients => {
  const at = (of: keyof LateralCoefficients) => none[of] + lift * (one[of] - none[of]);
  return { side: at("side"), roll: at("roll"), yaw: at("yaw") };
};

/**
 * Sideslip and controls from the same lattice, one solution for each. Surfaces with their controls. The drag: that of the wake far
 * downstream, the flow of sideslip without its part along the chords, and turned plain flaps'.
 */
export function lateralAir(side: Side, surfaces: readonly Surface[], about: { readonly x: number; readonly z: number }): LateralAir {
  const { flow, reference: { area, span } } = side;
  const [roll, yaw] = (["roll", "yaw"] as const).map((way) => steeringAxis(flow, surfaces, way));
  const slip = straight(sideDerivatives(side, { lift: 0, ...about }).sideslip, sideDerivatives(side, { lift: 1, ...about }).sideslip);
  const control = (axis: SteeringAxis | undefined) => {
    if (!axis) return undefined;
    const { loads, circulation } = flow.bend(axis.slopes);
    const at = (lift: number): LateralCoefficients => {
      const { side: force, roll: rolling, yaw: yawing } = loads(lift * area, about);
      return { side: force / area, roll: rolling / (area * span), yaw: yawing / (area * span) };
    };
    const coefficients = straight(at(0), at(1));
    return { circulation, steering: (lift: number) => ({ ...coefficients(lift), throw: axis.throw }) };
  };
  const [ailerons, rudders] = [control(roll), control(yaw)];
  const wind = flow.turn(() => [0, -1, 0]);
  const circulations = [wind, ailerons?.circulation, rudders?.circulation];
  const products = circulations.map((a) => circulations.map((b) => (a && b ? flow.drag(a, b) : 0)));
  return {
    ...(roll && { roll }), ...(yaw && { yaw }),
    frame: (lift) => ({
      area, span, sideslip: slip(lift),
      ...(ailerons && { aileron: ailerons.steering(lift) }), ...(rudders && { rudder: rudders.steering(lift) }),
    }),
    dragArea: ({ sideslip, aileron = 0, rudder = 0 }) => {
      const shares = [sideslip, aileron, rudder];
      const induced = shares.reduce((sum, a, i) => sum + shares.reduce((part, b, j) => part + a * b * products[i][j], 0), 0);
      return induced + (roll?.dragArea(aileron) ?? 0) + (yaw?.dragArea(rudder) ?? 0);
    },
  };
}
