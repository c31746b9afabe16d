import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, asker, byClass } from "../class-words";
import { bandNote, judge, past, where, type Judged } from "../judge";
import { atFin, atWhole, atWing } from "./places";
import { pitching, swinging } from "./ready";

/** A motion that grows by itself, faster than anyone need put up with. */
export const modeDivergent: Check = {
  code: "mode_divergent",
  wave: "polars",
  text: "A motion about level flight grows by itself: the short period, the Dutch roll, or the spiral and the phugoid faster than a pilot need put up with.",
  thresholds: [
    {
      name: "spiral", dimension: "time", text: "Least time in which a bank left alone may double.", usual: byClass({ aerobatic: undefined, indoor: undefined }, 3),
      source: "MIL-F-8785C asks for 8 s of a full-size aircraft at Level 2 (from memory); a model of a seventh of the size is √7 times as quick",
    },
    {
      name: "phugoid", dimension: "time", text: "Least time in which the rise and fall of speed and height may double.", usual: always(15),
      source: "MIL-F-8785C asks for 55 s of a full-size aircraft at Level 3 (from memory); a model of a thirteenth of the size is √13 times as quick",
    },
  ],
  run: (subject) => [...shortPeriod(subject), ...phugoid(subject), ...dutchRoll(subject), ...spiral(subject)],
};

const none = plain(0);

function shortPeriod(subject: Subject): Verdict[] {
  return growing(subject, pitching(subject), "modes.short_period.damping", (worst, note) => ({
    place: atWhole(subject), message: `the quick motion in pitch grows${note}: its damping is ${subject.say(worst.value)}; set the tail further aft, or bring weight nearer to the balance point`,
  }));
}

function dutchRoll(subject: Subject): Verdict[] {
  return growing(subject, swinging(subject), "modes.dutch_roll.damping", (worst, note) => ({
    place: atFin(subject, worst.set),
    message: `the Dutch roll grows${note}: its damping is ${subject.say(worst.value)}, and each swing of the tail is wider than the last; enlarge the fin, set it further aft, or take dihedral away`,
  }));
}

type Say = (worst: Judged, note: string) => Pick<Verdict, "place" | "message">;

function growing(subject: Subject, sets: readonly FigureSet[], figure: string, say: Say): Verdict[] {
  const found = past(sets, figure, none, "least").filter((one) => one.fails);
  const [worst] = found;
  return worst ? [{ severity: "warning", figure, loading: worst.set.loading.name, ...say(worst, where(found, subject) + bandNote(worst)) }] : [];
}

function spiral(subject: Subject): Verdict[] {
  const figure = "modes.spiral.doubling_time";
  const least = subject.limit(modeDivergent, "spiral");
  const found = least ? past(swinging(subject), figure, least, "least").filter((one) => one.fails) : [];
  const [worst] = found;
  if (!worst || !least) return [];
  return [{
    severity: "warning", figure, loading: worst.set.loading.name, place: atWing(subject, worst.set),
    message: `a bank left alone doubles in ${subject.say(worst.value)}${where(found, subject)}, ${asker(subject, modeDivergent, "spiral")} ${subject.say(least)}${bandNote(worst)}: ` +
      "it drops into a spiral when nobody looks; give the wing dihedral, or the fin less area",
  }];
}

/** Time in which the phugoid doubles; undefined where it dies. */
function doubling(set: FigureSet): Quantity | undefined {
  const [damping, frequency] = ["damping", "frequency"].map((name) => set.value(`modes.phugoid.${name}`)?.value);
  return damping !== undefined && frequency !== undefined && damping < 0 ? quantity(Math.LN2 / (-damping * frequency), dimensions.time) : undefined;
}

function phugoid(subject: Subject): Verdict[] {
  const least = subject.limit(modeDivergent, "phugoid");
  if (!least) return [];
  const found = pitching(subject).flatMap((set): Judged[] => {
    const value = doubling(set);
    const judged = value && { set, value, ...judge(value, least, "least") };
    return judged?.fails ? [judged] : [];
  }).sort((a, b) => a.value.value - b.value.value);
  const [worst] = found;
  return worst ? [{
    severity: "warning", figure: "modes.phugoid.damping", loading: worst.set.loading.name, place: atWhole(subject),
    message: `the slow rise and fall of speed and height doubles in ${subject.say(worst.value)}${where(found, subject)}, ${asker(subject, modeDivergent, "phugoid")} ${subject.say(least)}: ` +
      "it must be flown all the time; set the tail further aft, or bring weight nearer to the balance point",
  }] : [];
}
