import { compoundOf } from "../../../grammar/units/units";
import type { Fix } from "../../../shared/finding";
import { leastUsableLeft } from "../../compute/flight/sortie";
import { storeOf } from "../../compute/battery/store";
import type { FedFrom, SortieFlown } from "../../figures/facts";
import type { FigureSet } from "../../figures/figure-set";
import type { PlannedSortie } from "../../model/design/sortie";
import type { Instance } from "../../model/resolve/instance";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { literalOf, literalText, type Literal } from "./literal";

/** Looks at a value till it is known to a thousandth. */
const looks = 14;

/** The greatest value up to `most` with which `holds` is true, if it is of small ones and not of greater. */
function greatestWith(most: number, holds: (value: number) => boolean): number {
  let [low, high] = [0, most];
  for (let i = 0; i < looks; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** A property's literal in this file. */
export function literalIn(subject: Subject, set: FigureSet, block: Instance, name: string): Literal | undefined {
  const slot = subject.places.slot(set, block, name);
  return slot && slot.home.file === subject.file ? literalOf(slot.entry.value) : undefined;
}

export function rewriteLiteral({ file }: Subject, { span }: Literal, title: string, text: string): Fix {
  return { title, edits: [{ file: file.uri, start: span.start, end: span.end, text }] };
}

/** Two digits of a value in a literal's unit, not more than it, or not less. */
export function twoDigits(value: number, { unit }: Literal, towards: "down" | "up"): string {
  const { scale } = compoundOf(unit)!;
  const step = scale * 10 ** (Math.floor(Math.log10(value / scale) + 1e-9) - 1);
  const steps = towards === "down" ? Math.floor(value / step + 1e-6) : Math.ceil(value / step - 1e-6);
  return literalText(steps * step, unit, step);
}

/** Flown, with so much left of the usable charge of each pack? */
const suffices = ({ fly }: SortieFlown, plan: PlannedSortie, aim: number, fed: readonly FedFrom[]): boolean => {
  const flown = fly(plan, fed);
  return !flown.ended && leastUsableLeft(flown, fed) >= aim;
};

/**
 * A shorter leg: of those with a time the one that takes most charge, else the only one with a distance, for a way out is
 * flown home again. Nothing where its length is not a number in the text.
 */
export function shorterLeg(subject: Subject, set: FigureSet, block: Instance, one: SortieFlown, aim: number, fed: readonly FedFrom[]): Fix | undefined {
  const { plan } = one;
  const energy = (i: number) => (one.flown.legs[i]?.power ?? 0) * (one.flown.legs[i]?.time ?? 0);
  const of = (name: string) => plan.legs.map((leg, i) => ({ leg, i })).filter(({ leg }) => name in leg.for);
  const timed = of("time").sort((a, b) => energy(b.i) - energy(a.i));
  const gone = of("distance");
  const chosen = timed[0] ?? (gone.length === 1 ? gone[0] : undefined);
  const name = timed[0] ? "time" : "distance";
  const leg = chosen && block.children.get(chosen.leg.name);
  const literal = leg && literalIn(subject, set, leg, name);
  if (!chosen || !literal) return undefined;
  const cut = (length: number): PlannedSortie =>
    ({ ...plan, legs: plan.legs.map((own, i) => (i === chosen.i ? { ...own, for: name === "time" ? { time: length } : { distance: length } } : own)) });
  const length = greatestWith(literal.value, (value) => suffices(one, cut(value), aim, fed));
  if (length < shortest * literal.value) return undefined;
  const text = twoDigits(length, literal, "down");
  return rewriteLiteral(subject, literal, `Shorten leg ${chosen.leg.name} to ${text}`, text);
}

/** A leg cut further is not the flight that was meant. */
const shortest = 0.1;

/** A pack of more capacity in place of one that feeds the motors alone; its greater weight is left out. */
export function largerPack(subject: Subject, set: FigureSet, one: SortieFlown, aim: number, fed: readonly FedFrom[]): Fix | undefined {
  const [only, ...others] = fed;
  const source = nominal(set).sources.find(({ path }) => path === only?.path);
  const block = source && subject.places.blockOf(set, source.path);
  const literal = block && literalIn(subject, set, block, "capacity");
  if (others.length > 0 || source?.wired !== "single" || !literal) return undefined;
  const [pack] = source.packs;
  const holds = (capacity: number) => {
    const store = storeOf({ ...source, packs: [{ ...pack, capacity }] });
    return !("missing" in store) && suffices(one, one.plan, aim, [{ ...only, store }]);
  };
  const most = largest * literal.value;
  if (!holds(most)) return undefined;
  const text = twoDigits(most - greatestWith(most, (less) => holds(most - less)), literal, "up");
  return rewriteLiteral(subject, literal, `Take a pack of ${text}, which will weigh more`, text);
}

/** A pack so much larger asks for another aircraft. */
const largest = 2;
