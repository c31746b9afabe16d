import { dimensions } from "../../../grammar/units/dimension";
import { chain, halfWidth, plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import { reserve } from "../../compute/aircraft/performance";
import { leastUsableLeft } from "../../compute/flight/sortie";
import type { FedFrom, SortieFlown } from "../../figures/facts";
import type { FigureSet } from "../../figures/figure-set";
import type { Instance } from "../../model/resolve/instance";
import type { Check, Subject, Verdict } from "../check";
import { always, asker, practice } from "../class-words";
import { bandNote, judge } from "../judge";
import { flies } from "../readiness";
import { largerPack, shorterLeg } from "../solve/sortie";
import { unflown } from "./unflown";

/** A sortie of a loading, with its block and what feeds it. */
interface Case extends SortieFlown {
  readonly set: FigureSet;
  readonly block: Instance;
  readonly fed: readonly FedFrom[];
  /** Its charge's figure. */
  readonly figure: string;
}

/** A sortie that can't be flown, or that its packs don't last for. */
export const packDrained: Check = {
  code: "pack_drained",
  wave: "polars",
  text: "A sortie takes more than the usable charge of its packs, or nearly; or one of its legs can't be flown.",
  thresholds: [{ name: "", dimension: "ratio", text: "Least share of the usable charge left at a sortie's end, for the landing.", usual: always(reserve), source: practice }],
  run(subject) {
    return subject.sets.filter((set) => flies(set, subject)).flatMap((set) => (set.facts.sorties ?? []).flatMap((one) => {
      const block = subject.file.root.children.get(one.plan.path);
      const fed = (set.facts.flight?.fed ?? []).filter(({ share }) => share > 0);
      const verdict = block && judgeSortie(subject, { ...one, set, block, fed, figure: `flight.sortie.${one.plan.path}.charge_left` });
      return verdict ? [{ loading: set.loading.name, ...verdict }] : [];
    }));
  },
};

const inLoading = ({ set }: Case): string => (set.loading.block ? ` in ${set.loading.name}` : "");

function judgeSortie(subject: Subject, one: Case): Verdict | undefined {
  const { plan, fly, set, block, aeroplane } = one;
  const flown = fly(plan);
  const last = flown.legs[flown.legs.length - 1];
  if (flown.ended === "charge") return drained(subject, one);
  if (!flown.ended) return scarce(subject, one);
  const { name } = plan.legs[flown.legs.length - 1];
  const leg = block.children.get(name);
  const { message, property, unsure, fix } = unflown(subject, set, leg ?? block, last, flown.ended, aeroplane);
  return {
    severity: unsure ? "hint" : "error", place: leg ? subject.places.property(leg, property) : subject.places.block(block),
    message: `leg ${name} of ${plan.path}${inLoading(one)} ${message}`, fixes: fix && [fix],
  };
}

/** Of which pack the usable charge ends first, or would. */
function scarcest({ fly, plan, fed }: Case): FedFrom {
  const stores = fly(plan).legs.at(-1)?.stores ?? [];
  const left = (i: number) => 1 - (1 - stores[i].charge) / fed[i].store.usable;
  return fed.reduce((worst, each, i) => (left(i) < left(fed.indexOf(worst)) ? each : worst), fed[0]);
}

/** Half the width of the band of the share of the usable charge. */
const bandOf = ({ set, figure }: Case, { store }: FedFrom): Quantity | undefined => {
  const left = set.value(figure);
  return left && chain(left, 0, 1 / store.usable, left.dimension);
};

function drained(subject: Subject, one: Case): Verdict {
  const { plan, fly, set, block, figure } = one;
  const pack = scarcest(one);
  const name = subject.places.name(set, pack.path);
  const { legs } = fly(plan);
  const { time } = legs[legs.length - 1];
  const leg = plan.legs[legs.length - 1];
  const left = set.value(figure);
  const share = (value: number) => subject.say(plain(value), "share");
  const takes = left ? `takes ${share(1 - left.value)} of ${name}` : `takes more than ${name} holds`;
  const legBlock = block.children.get(leg.name);
  const gone = time > 0 ? `${subject.say(quantity(time, dimensions.time))} into leg ${leg.name}` : `before leg ${leg.name}`;
  return {
    severity: "error", ...(left && { figure }), place: legBlock ? subject.places.property(legBlock, Object.keys(leg.for)[0]) : subject.places.block(block),
    message: `${plan.path}${inLoading(one)} ${takes}, of which ${share(pack.store.usable)} may be used: that is gone ${gone}; shorten a leg, fly slower, or take a larger pack`,
    fixes: fixes(subject, one, pack), related: [{ message: `${name} stands here`, place: subject.places.part(set, pack.path, "capacity") }],
  };
}

/** It lasts: is enough left for the landing? */
function scarce(subject: Subject, one: Case): Verdict | undefined {
  const { plan, fly, set, fed, figure, block } = one;
  const least = subject.limit(packDrained);
  if (!least || fed.length === 0) return undefined;
  const pack = scarcest(one);
  const band = bandOf(one, pack);
  const value: Quantity = { ...(band ?? plain(0)), value: leastUsableLeft(fly(plan), fed) };
  const judged = judge(value, least, "least");
  if (!judged.fails && !judged.straddles) return undefined;
  const name = subject.places.name(set, pack.path);
  const leaves = `${plan.path}${inLoading(one)} leaves ${subject.say(value, "share")} of the charge of ${name} that may be used`;
  const needs = `${asker(subject, packDrained)} ${subject.say(least, "share")} for the landing`;
  return {
    severity: judged.fails ? "warning" : "hint", figure, place: subject.places.block(block),
    message: judged.fails ? `${leaves}${bandNote(judged)}; ${needs}: shorten a leg, fly slower, or take a larger pack` : `${leaves}; ${needs}: it holds, but its band reaches past the limit`,
    fixes: judged.fails ? fixes(subject, one, pack) : undefined,
  };
}

/** Of the usable charge, over what is needed and its band, so that rounding does not undo a fix. */
const over = 0.005;

/** Of a sortie whose charge has no figure, as the packs are flown flat before its end. */
const unknownBand = 0.04;

function fixes(subject: Subject, one: Case, pack: FedFrom): Fix[] {
  const band = bandOf(one, pack);
  const aim = (subject.limit(packDrained)?.value ?? 0) + over + (band ? 1.2 * halfWidth(band) : unknownBand);
  return [shorterLeg(subject, one.set, one.block, one, aim, one.fed), largerPack(subject, one.set, one, aim, one.fed)].filter((fix) => fix !== undefined);
}
