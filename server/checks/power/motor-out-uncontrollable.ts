import { divide, type Quantity } from "../../../grammar/units/quantity";
import type { Check } from "../check";
import { always, asker } from "../class-words";
import { bandNote, judge, type Judgement } from "../judge";
import { dead, failuresOf, type Failure } from "./failures";

interface Found extends Judgement, Failure {
  /** Over the stall; absent where it can't be held at any speed. */
  readonly ratio?: Quantity;
}

/** Minimum control speed over the stall. */
export function controlRatio({ set, figures }: Failure): Quantity | undefined {
  const [speed, stall] = [set.value(`${figures}.minimum_control_speed`), set.value("flight.stall_speed")];
  return speed && stall && divide(speed, stall);
}

/** One motor dead, the other turns the model over at speeds at which it flies. */
export const motorOutUncontrollable: Check = {
  code: "motor_out_uncontrollable",
  wave: "polars",
  text: "With one motor dead and the rest at full throttle, rudder and ailerons hold it straight only at speeds well over the stall. Only with several powerplants and a rudder.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Highest minimum control speed, over the stall speed.", usual: always(1.2), source: "14 CFR 23.149(b), of full-size twins",
  }],
  run(subject) {
    const most = subject.limit(motorOutUncontrollable);
    if (!most) return [];
    const found = failuresOf(subject).flatMap((failure): Found[] => {
      if (!failure.one.control) return [{ ...failure, fails: true, straddles: false }];
      const ratio = controlRatio(failure);
      return !ratio ? [] : [{ ...failure, ratio, ...judge(ratio, most, "most") }];
    });
    const size = ({ ratio }: Found) => ratio?.value ?? Infinity;
    const [worst] = found.filter(({ fails, straddles }) => fails || straddles).sort((a, b) => size(b) - size(a));
    if (!worst) return [];
    const { set, one, ratio, fails } = worst;
    const figure = `${worst.figures}.minimum_control_speed`;
    const held = ratio ? `it is held straight from ${subject.say(set.value(figure)!)} up, ${subject.say(ratio)} × stall` : "nothing holds it straight at any speed of level flight";
    const needs = `${asker(subject, motorOutUncontrollable, "", "stands")} ${subject.say(most)}`;
    return [{
      severity: fails ? "warning" : "hint", figure, loading: set.loading.name, place: subject.places.part(set, one.path),
      message: fails
        ? `${dead(worst, subject)}, ${held}; ${needs}${bandNote(worst)}: slower, it turns and rolls over unless you throttle back at once; give it more rudder or ` +
          "fin, or less thrust, set the motors closer together, or point their shafts outward"
        : `${dead(worst, subject)}, ${held}; ${needs}: it holds, but its band reaches past the limit`,
    }];
  },
};
