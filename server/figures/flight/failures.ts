import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import type { LateralAir } from "../../compute/motor-out/lateral-air";
import type { Held } from "../../compute/motor-out/minimum-control-speed";
import type { Critical, MotorOut } from "../../compute/motor-out/motor-out";
import { together, type Cause, type Contribution } from "../../compute/motor-out/plant";
import { lateralAccount } from "../../compute/stability/accounts";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";
import { sectionsAccount } from "./points";

export const causes: Readonly<Record<Cause, string>> = {
  thrust: "thrust", drag: "drag of the dead propeller", torque: "torque", "descending blade": "the blade that goes down",
  "normal force": "force across the shaft", slipstream: "swirl on fin and tail",
};

const mechanics = "moments after D. P. Raymer, Aircraft Design, ch. 16; limits of bank after 14 CFR 23.149; controls by the vortex lattice and H. Glauert, ARC R&M 1095";

const left =
  "lift that a slipstream adds to the wing behind it, what that wing takes out of its swirl, and its drift in a sideslip (on fins, rudders and tailplanes its speed " +
  "and its swirl count, on what stands in it), the sudden failure itself, propellers in the wind of a sideslip, bodies' side force, motors getting warm. Packs are half charged. Below the " +
  "stall, lift is that at the stall. " +
  `Bands are those of the weight alone. ${lateralAccount} ${sectionsAccount}`;

/** The figures of one powerplant dead, each with its account. */
export function putFailure(
  set: FigureSet, one: MotorOut, critical: Critical | undefined, lateral: LateralAir,
  of: (name: "speed" | "rudder" | "climb", dimension: DimensionName) => Quantity | undefined,
): void {
  const { path, control, atLiftOff, climb } = one;
  const input = (name: string, value: number | undefined, dimension: DimensionName): Input[] =>
    (value === undefined ? [] : [{ name, value: quantity(value, dimensions[dimension]) }]);
  const shared: readonly Input[] = [
    ...named(set, "mass.total", "flight.stall_speed", "stability.yaw_stiffness"),
    ...[lateral.roll, lateral.yaw].flatMap((axis) => (axis ? [{ name: "controls", value: controlsOf(axis) }] : [])),
    ...(critical ? [{ name: "critical", value: criticalText(critical) }] : []),
  ];
  const account = (formula: string, inputs: readonly Input[]): Account => ({ formula, inputs: [...shared, ...inputs], source: mechanics, notModelled: left });
  const lying = ({ bank, sideslip, aileron }: Held): Input[] => [
    ...input("bank, right wing down", bank, "angle"), ...input("sideslip, wind from the right", sideslip, "angle"),
    ...input("aileron, rolling left", aileron === undefined ? undefined : lateral.roll?.angle(aileron), "angle"),
  ];
  set.put(`motor_out.${path}.minimum_control_speed`, of("speed", "speed"), account(
    "lowest speed from which up no side force, roll or yaw is left with rudder and ailerons within their throws, at most 5° of bank and 15° of sideslip" +
      (control?.below ? "; it is still held at half the stall speed, where the search ends: the true one is lower" : ""),
    control ? [...(control.below ? [] : [{ name: "what ends first", value: control.held.limit }]), ...lying(control.held)] : []));
  set.put(`motor_out.${path}.rudder`, of("rudder", "angle"), account(
    "deflection that leaves no side force, roll or yaw at 1.2 × flight.stall_speed, without sideslip where controls and 5° of bank allow, else with the " +
      `least use of them${atLiftOff && atLiftOff.use > 1 ? "; more than there is" : ""}`,
    atLiftOff ? [...contributed(atLiftOff.contributions), ...lying(atLiftOff)] : []));
  set.put(`motor_out.${path}.climb_rate`, of("climb", "speed"), account(
    "speed × sine of the path at which thrust − drag − drag of the dead propeller − drag of sideslip and controls holds weight × sine, greatest over the " +
      "speeds at which it can be held", input("at", climb?.speed, "speed")));
}

export const controlsOf = ({ controls }: NonNullable<LateralAir["yaw"]>): string =>
  `${controls.map(({ control }) => control.path).join(", ")}${controls.some(({ assumed }) => assumed) ? " (throws not written: 20°)" : ""}`;

/** Yaw by cause, all powerplants together; roll where a cause gives that alone. */
function contributed(contributions: readonly Contribution[]): Input[] {
  const moment = (name: string, value: number): Input[] => (Math.abs(value) > 1e-6 ? [{ name, value: quantity(value, dimensions.torque) }] : []);
  return (Object.keys(causes) as Cause[]).flatMap((cause) => {
    const { yaw, roll } = together(contributions.filter((one) => one.cause === cause));
    return [...moment(`yaw by ${causes[cause]}, nose right`, yaw), ...moment(`roll by ${causes[cause]}, right wing down`, roll)];
  });
}

function criticalText({ paths, because }: Critical): string {
  if (paths.length === 0) return "neither: each failure asks for as much of the controls";
  const size = ({ yaw, roll }: Critical["because"][number]) => Math.hypot(yaw, roll);
  const main = because.filter((one) => size(one) > 0.05 * size(because[0])).map(({ cause }) => causes[cause]);
  return `${paths.join(", ")}, by ${main.join(" and ")}`;
}
