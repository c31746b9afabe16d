import { plain } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Place } from "../../../shared/finding";
import type { Check, Subject, Verdict } from "../check";
import { always, asker } from "../class-words";
import { bandNote, judge, past, where } from "../judge";
import { atFin, atWhole } from "./places";
import { pitching, swinging } from "./ready";

const levels = "MIL-F-8785C, Level 2, category B (from memory)";

/** A quick motion that goes on swinging. */
export const modeUndamped: Check = {
  code: "mode_undamped",
  wave: "polars",
  text: "The short period or the Dutch roll hardly dies. One that grows is `mode_divergent`.",
  thresholds: [
    { name: "short_period", dimension: "ratio", text: "Least damping of the short period.", usual: always(0.2), source: levels },
    { name: "dutch_roll", dimension: "ratio", text: "Least damping of the Dutch roll.", usual: always(0.02), source: levels },
  ],
  run: (subject) => [
    ...swings(subject, "short_period", pitching(subject), "the quick motion in pitch", () => atWhole(subject), "set the tail further aft, or bring weight nearer to the balance point"),
    ...swings(subject, "dutch_roll", swinging(subject), "the Dutch roll", (set) => atFin(subject, set), "enlarge the fin, set it further aft, or take dihedral away"),
  ],
};

function swings(subject: Subject, mode: string, sets: readonly FigureSet[], motion: string, place: (set: FigureSet) => Place, mend: string): Verdict[] {
  const figure = `modes.${mode}.damping`;
  const least = subject.limit(modeUndamped, mode);
  const found = least ? past(sets, figure, least, "least").filter((one) => one.fails) : [];
  const [worst] = found;
  if (!worst || !least || judge(worst.value, plain(0), "least").fails) return [];
  return [{
    severity: "warning", figure, loading: worst.set.loading.name, place: place(worst.set),
    message: `damping of ${motion} is ${subject.say(worst.value)}${where(found, subject)}, ${asker(subject, modeUndamped, mode)} ${subject.say(least)}${bandNote(worst)}: ` +
      `it swings on after every gust; ${mend}`,
  }];
}
