import type { Check, Subject, Verdict } from "../check";
import { asker, byClass } from "../class-words";
import { bandNote, past, where } from "../judge";
import { balances, nominal } from "../readiness";
import { aftTailplanes, placeOf, tailed } from "./volumes";

/** A fin too small or too near, or none. */
export const finVolumeLow: Check = {
  code: "fin_volume_low",
  wave: "quick",
  text: "The fin volume is under the range of the class, or there is nothing upright at all. Only with an aft tailplane and no canard.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Least fin volume.",
    usual: byClass({ glider: 0.015, motor_glider: 0.015, tailless: undefined }, 0.02),
    source: "M. Drela, course notes for model-size aircraft, MIT (from memory): 0.02 to 0.05; gliders 0.015 to 0.025 common practice, no source",
  }],
  run(subject) {
    const least = subject.limit(finVolumeLow);
    if (!least) return [];
    const sets = tailed(subject);
    const found = past(sets, "stability.fin_volume", least, "least");
    const [worst] = found;
    if (!worst) return noFin(subject, sets);
    const needs = `${asker(subject, finVolumeLow)} ${subject.say(least)}`;
    const value = `fin volume is ${subject.say(worst.value)}${where(found, subject)}`;
    const fins = nominal(worst.set).surfaces.filter(({ kind }) => kind === "fin");
    return [{
      severity: worst.fails ? "warning" : "hint", figure: "stability.fin_volume", loading: worst.set.loading.name,
      place: placeOf(subject, worst.set, fins.length > 0 ? fins : aftTailplanes(worst.set)),
      message: worst.fails
        ? `${value}, ${needs}${bandNote(worst)}: the nose wanders and turns swing it; enlarge the fin or set it further aft`
        : `${value}: ${needs}; it holds, but its band reaches past the limit`,
    }];
  },
};

/** Said once the rest is there: a fin is often written last. */
function noFin(subject: Subject, sets: readonly Subject["sets"][number][]): Verdict[] {
  const bare = sets.find((set) => set.value("stability.fin_volume") === undefined && set.facts.reference && balances(set, subject));
  if (!bare) return [];
  return [{
    severity: "warning", figure: "stability.fin_volume", loading: bare.loading.name, place: placeOf(subject, bare, aftTailplanes(bare)),
    message: "there is no fin, no winglet and no V-tail: nothing turns the nose into the wind; add a fin",
  }];
}
