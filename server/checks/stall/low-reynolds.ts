import { sectionThickness } from "../../compute/section/thickness";
import type { FigureSet } from "../../figures/figure-set";
import type { Place } from "../../../shared/finding";
import { plain } from "../../../grammar/units/quantity";
import type { Check, Subject } from "../check";
import { always } from "../class-words";
import { bandNote, past, where } from "../judge";
import { balances, nominal } from "../readiness";

/** A section too thick for so small and slow a wing. */
export const lowReynolds: Check = {
  code: "low_reynolds",
  wave: "polars",
  text: "A wing section of some thickness at so low a Reynolds number at stall that the flow parts early.",
  thresholds: [
    {
      name: "", dimension: "ratio", text: "Least Reynolds number of the mean chord at stall.", usual: always(60_000),
      source: "F. W. Schmitz, Aerodynamik des Flugmodells, 1942 (from memory): a section an eighth of its chord thick falls back to half its lift over drag under some 60,000 to 80,000",
    },
    {
      name: "thickness", dimension: "ratio", text: "Greatest thickness of a section, in chords, that a lower one doesn't harm.", usual: always(0.08),
      source: "thin plates of the same book have no such fall; where between them it begins is common practice, no source",
    },
  ],
  run(subject) {
    const [least, most] = [subject.limit(lowReynolds), subject.limit(lowReynolds, "thickness")];
    if (!least || !most) return [];
    const sets = subject.sets.filter((set) => balances(set, subject) && thickest(set).share > most.value);
    const found = past(sets, "wing.reynolds_stall", least, "least").filter((one) => one.fails);
    const [worst] = found;
    if (!worst) return [];
    const { path, share } = thickest(worst.set);
    return [{
      severity: "hint", figure: "wing.reynolds_stall", loading: worst.set.loading.name, place: placeOf(subject, worst.set, path),
      message: `Reynolds number at stall is ${subject.say(worst.value)}${where(found, subject)}, under ${subject.say(least)}${bandNote(worst)}: small and slow as it is, ` +
        `the flow may part early from a section ${subject.say(plain(share), "share")} thick, and stall and drag are rough guesses; take one of ${subject.say(most, "share")} or less, or a larger chord`,
    }];
  },
};

/** The thickest section of the wings, and whose it is. */
function thickest(set: FigureSet): { readonly path: string; readonly share: number } {
  return nominal(set).surfaces.filter(({ kind, reference }) => kind === "wing" && reference)
    .flatMap(({ path, halves }) => halves.flatMap(({ panels }) => panels.flatMap(({ inner, outer }) =>
      [inner, outer].map(({ section }) => ({ path, share: sectionThickness(section.shape) })))))
    .reduce((most, one) => (one.share > most.share ? one : most), { path: "", share: 0 });
}

function placeOf({ places }: Subject, set: FigureSet, path: string): Place {
  return places.part(set, path, "foil");
}
