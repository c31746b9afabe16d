import { dimensions } from "../../../grammar/units/dimension";
import { chain, divide, type Quantity } from "../../../grammar/units/quantity";
import type { Fix, Place } from "../../../shared/finding";
import { shiftNeeded } from "../../compute/mass/balance";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject } from "../check";
import { always, practice } from "../class-words";
import { bandNote, judge, where, type Judged } from "../judge";
import { balances, nominal } from "../readiness";
import { freeName, newBlock, pointText } from "../solve/edit";
import { move, movables } from "../solve/movable";

/** One wing heavier than the other. */
export const cgOffCentre: Check = {
  code: "cg_off_centre",
  wave: "quick",
  text: "The balance point lies off the plane of symmetry.",
  thresholds: [{ name: "", dimension: "ratio", text: "Greatest distance off the plane of symmetry, in spans.", usual: always(0.005), source: practice }],
  run(subject) {
    const most = subject.limit(cgOffCentre);
    if (!most) return [];
    const found = subject.sets.flatMap((set): Judged[] => {
      const [y, span] = [set.value("cg.y"), set.value("wing.span")];
      if (!y || !span || !balances(set, subject)) return [];
      const value = divide(chain(y, Math.abs(y.value), Math.sign(y.value), dimensions.length), span);
      const judged = { set, value, ...judge(value, most, "most") };
      return judged.fails ? [judged] : [];
    }).sort((a, b) => b.value.value - a.value.value);
    const [worst] = found;
    if (!worst) return [];
    const y = worst.set.value("cg.y")!;
    const cause = heaviestSide(worst.set, Math.sign(y.value));
    const side = y.value > 0 ? "right" : "left";
    return [{
      severity: "warning", figure: "cg.y", loading: worst.set.loading.name, place: placeOf(subject, worst.set, cause),
      message: `balance point ${subject.say(size(y))} to the ${side}${where(found, subject)}, ${subject.say(worst.value, "share")} of the span and over ${subject.say(most, "share")}: ` +
        `it will roll and turn to that side${bandNote(worst)}` +
        `${cause ? `; ${cause} pulls most: move it in, or add weight on the ${side === "right" ? "left" : "right"}` : ""}`,
      fixes: fixesOf(subject, worst.set, cause, most.value),
    }];
  },
};

const size = (q: Quantity): Quantity => chain(q, Math.abs(q.value), Math.sign(q.value), dimensions.length);

/** The part with the greatest moment to the heavy side. */
function heaviestSide(set: FigureSet, sign: number): string | undefined {
  const parts = [...(set.facts.mass?.byPath ?? [])].filter(([path]) => !path.includes("."));
  const ranked = parts.map(([path, part]) => ({ path, moment: sign * part.mass.value * part.cg[1].value })).sort((a, b) => b.moment - a.moment);
  return ranked[0] && ranked[0].moment > 0 ? ranked[0].path : undefined;
}

function placeOf({ places }: Subject, set: FigureSet, path: string | undefined): Place {
  return path ? places.part(set, path, "at") : places.whole();
}

/** Moves the part that pulls most, or puts a weight in the light tip: whichever leaves every loading within the limit. */
function fixesOf(subject: Subject, set: FigureSet, cause: string | undefined, most: number): Fix[] {
  const y = set.value("cg.y")!.value;
  const mass = set.value("mass.total")!.value;
  const holds = (moment: (one: FigureSet) => number, added = 0) => subject.sets.every((one) => {
    const [own, at, span] = ["mass.total", "cg.y", "wing.span"].map((name) => one.value(name)?.value ?? 0);
    return Math.abs(own * at + moment(one)) <= most * span * (own + added);
  });
  const part = cause ? movables(subject, 1, (_, path) => path === cause)[0] : undefined;
  const weight = part?.weights.get(set);
  const by = weight ? shiftNeeded(mass, y, 0, weight) : undefined;
  const inward = part && by !== undefined && Math.abs(part.at + by) <= Math.abs(part.at) && holds((one) => (part.weights.get(one) ?? 0) * by);
  const fixes = inward ? [move(subject, part, 1, by)] : [];
  const tip = tipOf(set, y > 0 ? -1 : 1);
  const grams = tip ? Math.round((1000 * mass * y) / -tip[1]) : 0;
  if (!tip || !(grams >= 1 && grams < heaviestTip * 1000 * mass) || !holds(() => (grams / 1000) * tip[1], grams / 1000)) return fixes;
  const block = `item ${freeName(subject.file, "tip_weight")} { weight = ${grams} g ; at = ${pointText(tip)} }`;
  return [...fixes, { title: `Add ${grams} g in the ${y > 0 ? "left" : "right"} wing tip`, edits: [newBlock(subject.file, block)] }];
}

/** As a share of the whole: common practice, no source. */
const heaviestTip = 0.05;

/** The outermost section of the wings on one side, a third of the chord back. */
function tipOf(set: FigureSet, sign: 1 | -1): [number, number, number] | undefined {
  const ends = nominal(set).surfaces.filter(({ kind }) => kind === "wing")
    .flatMap(({ halves }) => halves.flatMap(({ panels }) => panels.map(({ outer }) => outer)))
    .sort((a, b) => sign * (b.leadingEdge[1] - a.leadingEdge[1]));
  const [end] = ends;
  if (!end || sign * end.leadingEdge[1] <= 0) return undefined;
  return [end.leadingEdge[0] + 0.33 * end.chord, end.leadingEdge[1] - sign * 0.01, end.leadingEdge[2]];
}
