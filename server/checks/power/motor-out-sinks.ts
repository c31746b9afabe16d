import type { Check, Subject } from "../check";
import { always, asker } from "../class-words";
import { bandNote, judge, type Judged } from "../judge";
import { dead, failuresOf, type Failure } from "./failures";
import { controlRatio, motorOutUncontrollable } from "./motor-out-uncontrollable";

/** Where it must fly faster than is well so as not to turn over, that is what's wrong, and has a check of its own. */
function overturns(failure: Failure, subject: Subject): boolean {
  const [ratio, most] = [controlRatio(failure), subject.limit(motorOutUncontrollable)];
  return ratio !== undefined && most !== undefined && judge(ratio, most, "most").fails;
}

/** One motor dead, the other does not keep it up. */
export const motorOutSinks: Check = {
  code: "motor_out_sinks",
  wave: "polars",
  text: "With one motor dead and the rest at full throttle it climbs hardly or not at any speed at which it can be held. Only with several powerplants and a rudder.",
  thresholds: [{
    name: "", dimension: "speed", text: "Least climb with one motor dead.", usual: always(0.25),
    source: "about 50 ft/min, where full-size twins have their ceiling on one; common practice, no source",
  }],
  run(subject) {
    const least = subject.limit(motorOutSinks);
    if (!least) return [];
    const found = failuresOf(subject).flatMap((failure): (Failure & Judged)[] => {
      const value = failure.set.value(`${failure.figures}.climb_rate`);
      return value && !overturns(failure, subject) ? [{ ...failure, value, ...judge(value, least, "least") }] : [];
    });
    const [worst] = found.filter(({ fails, straddles }) => fails || straddles).sort((a, b) => a.value.value - b.value.value);
    if (!worst) return [];
    const { set, one, value, fails } = worst;
    const climb = `the best it does is ${value.value < 0 ? "to sink" : "to climb"} ${subject.say({ ...value, value: Math.abs(value.value) })}`;
    const needs = `${asker(subject, motorOutSinks)} ${subject.say(least)}`;
    return [{
      severity: fails ? "warning" : "hint", figure: `${worst.figures}.climb_rate`, loading: set.loading.name, place: subject.places.part(set, one.path),
      message: fails
        ? `${dead(worst, subject)}, ${climb}${bandNote(worst)}; ${needs}: it comes down wherever it is; give the motors more thrust, save weight or drag, or let the propellers fold`
        : `${dead(worst, subject)}, ${climb}; ${needs}: it does, but its band reaches past that`,
    }];
  },
};
