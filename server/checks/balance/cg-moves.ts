import { divide, subtract, type Quantity } from "../../../grammar/units/quantity";
import { leastMargin } from "../../figures/class-margins";
import type { FigureSet } from "../../figures/figure-set";
import type { Fix } from "../../../shared/finding";
import { shiftNeeded } from "../../compute/mass/balance";
import type { Check, Subject, Verdict } from "../check";
import { asker, isUsual, practice } from "../class-words";
import { bandNote, judge } from "../judge";
import { balances } from "../readiness";
import { move, movables } from "../solve/movable";
import { greatestMargin } from "./margins";

/** The balance point wanders more between loadings than one trim and one pack place can serve. */
export const cgMoves: Check = {
  code: "cg_moves",
  // Before the forward limit is known, the usual range could say what the true one takes back.
  wave: "polars",
  text: "Between two loadings the balance point moves by more than its allowed range holds.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Greatest move between loadings, in mean chords, where the forward limit isn't known or the design sets its own.",
    usual: (airframe) => greatestMargin - leastMargin[airframe].value,
    source: `the range from a static margin of 25 % to the least of the class; ${practice}`,
  }],
  run(subject) {
    const limit = subject.limit(cgMoves);
    const ready = subject.sets.filter((set) => set.value("cg.x") && set.value("wing.mean_chord") && balances(set, subject));
    if (!limit || ready.length < 2) return [];
    const own = isUsual(subject, cgMoves) ? allowedRange(ready) : undefined;
    const most = own ?? limit;
    // Limits that leave no room at all have findings of their own.
    if (most.value <= 0) return [];
    const sorted = [...ready].sort((a, b) => xOf(a) - xOf(b));
    const [fore, aft] = [sorted[0], sorted[sorted.length - 1]];
    const moved = subtract(aft.value("cg.x")!, fore.value("cg.x")!);
    const share = divide(moved, fore.value("wing.mean_chord")!);
    const judged = judge(share, most, "most");
    if (!judged.fails) return [];
    const odd = fartherFrom(ready, fore, aft);
    const cause = moverBetween(fore, aft);
    return [{
      severity: "warning", figure: "cg.x", loading: odd.loading.name, place: subject.places.loading(odd),
      message: `balance point moves ${subject.say(moved)} between ${fore.loading.name} and ${aft.loading.name}, ${subject.say(share, "share")} of the mean chord` +
        `${cause ? `, mostly by ${cause}` : ""}: one trim does not suit both, and ${own ? "from its forward to its aft limit are" : asker(subject, cgMoves, "", "has room for")} ${subject.say(most, "share")}` +
        `${bandNote(judged)}; carry what changes nearer to the balance point`,
      fixes: fixesOf(subject, ready, most.value),
    } satisfies Verdict];
  },
};

/** From the forward to the aft limit of the balance point, whichever loading's is nearer, in mean chords; undefined where one isn't known. */
function allowedRange(ready: readonly FigureSet[]): Quantity | undefined {
  const ranges = ready.map((set) => {
    const [forward, aft] = [set.value("stability.cg_forward"), set.value("stability.cg_aft")];
    return forward && aft && divide(subtract(aft, forward), set.value("wing.mean_chord")!);
  });
  return ranges.reduce((least, one) => (least && one && (one.value < least.value ? one : least)));
}

const xOf = (set: FigureSet): number => set.value("cg.x")!.value;

/** Of the two ends, the one that lies farther from the first loading written: that is where the design departs from it. */
const fartherFrom = ([first]: readonly FigureSet[], fore: FigureSet, aft: FigureSet): FigureSet =>
  Math.abs(xOf(aft) - xOf(first)) >= Math.abs(xOf(fore) - xOf(first)) ? aft : fore;

/** The part that shifts the balance most between two loadings. */
function moverBetween(a: FigureSet, b: FigureSet): string | undefined {
  const middle = (xOf(a) + xOf(b)) / 2;
  const moment = (set: FigureSet, path: string) => {
    const part = set.facts.mass?.byPath.get(path);
    return part ? part.mass.value * (part.cg[0].value - middle) : 0;
  };
  const paths = new Set([a, b].flatMap((set) => [...(set.facts.mass?.byPath.keys() ?? [])].filter((path) => !path.includes("."))));
  const ranked = [...paths].map((path) => ({ path, change: moment(b, path) - moment(a, path) })).sort((p, q) => q.change - p.change);
  return ranked[0] && ranked[0].change > 0 ? ranked[0].path : undefined;
}

/** Carries a part that is not in all loadings where the others balance without it. */
function fixesOf(subject: Subject, ready: readonly FigureSet[], most: number): Fix[] {
  return movables(subject, 0, () => true).flatMap((part): Fix[] => {
    const without = ready.filter((set) => !part.weights.has(set));
    if (without.length === 0 || without.length === ready.length) return [];
    const target = without.reduce((sum, set) => sum + xOf(set), 0) / without.length;
    const held = ready.filter((set) => part.weights.has(set));
    const by = shiftNeeded(held[0].value("mass.total")!.value, xOf(held[0]), target, part.weights.get(held[0])!);
    const after = ready.map((set) => xOf(set) + ((part.weights.get(set) ?? 0) * by) / set.value("mass.total")!.value);
    const chord = ready[0].value("wing.mean_chord")!.value;
    return Math.max(...after) - Math.min(...after) <= most * chord ? [move(subject, part, 0, by)] : [];
  }).slice(0, 1);
}

