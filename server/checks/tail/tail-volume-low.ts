import type { Check } from "../check";
import { asker, byClass } from "../class-words";
import { bandNote, past, where } from "../judge";
import { aftTailplanes, placeOf, tailed } from "./volumes";

/** A tailplane too small or too near for the wing. */
export const tailVolumeLow: Check = {
  code: "tail_volume_low",
  wave: "quick",
  text: "The tail volume is under the range of the class. Only with an aft tailplane and no canard.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Least tail volume.",
    usual: byClass({ trainer: 0.45, glider: 0.3, motor_glider: 0.3, scale: 0.3, speed: 0.3, indoor: 0.3, tailless: undefined }, 0.35),
    source: "M. Drela, course notes for model-size aircraft, MIT (from memory): 0.30 to 0.60; by class common practice, no source",
  }],
  run(subject) {
    const least = subject.limit(tailVolumeLow);
    const found = least ? past(tailed(subject), "stability.tail_volume", least, "least") : [];
    const [worst] = found;
    if (!least || !worst) return [];
    const needs = `${asker(subject, tailVolumeLow)} ${subject.say(least)}`;
    const value = `tail volume is ${subject.say(worst.value)}${where(found, subject)}`;
    return [{
      severity: worst.fails ? "warning" : "hint", figure: "stability.tail_volume", loading: worst.set.loading.name,
      place: placeOf(subject, worst.set, aftTailplanes(worst.set)),
      message: worst.fails
        ? `${value}, ${needs}${bandNote(worst)}: it pitches easily and stands little shift of weight; enlarge the tailplane or set it further aft`
        : `${value}: ${needs}; it holds, but its band reaches past the limit`,
    }];
  },
};
