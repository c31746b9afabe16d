import { catalogue, entryOf } from "../../../shared/catalogue";
import { checks } from "../../checks/registry";
import { limitName } from "../../checks/limits";
import type { DimensionName } from "../../../grammar/units/dimension";
import type { Span } from "../../../grammar/tree";
import type { View } from "../view";
import type { Item } from "./item";

/** Every figure that may be named: those of the design with their values, then those of the catalogue it hasn't. */
export function figureItems(view: View, replace?: Span, loading?: string): Item[] {
  const set = loading === undefined ? view.set : view.analysis.set(loading);
  const there = set.all();
  const names = new Set(there.map((figure) => figure.name));
  const item = (name: string, rank: number, detail: string): Item =>
    ({ label: name, sort: "figure", rank, detail, replace, topic: { about: "figure", name } });
  // A part's own weight is seldom asked for; what the whole has comes first.
  const ofPart = (name: string) => entryOf(name)?.name.includes("<path>") === true;
  return [
    ...there.map((figure) => item(figure.name, ofPart(figure.name) ? 2 : 0, view.analysis.say(figure.quantity, figure.entry.style))),
    ...catalogue.filter((entry) => !entry.name.includes("<path>") && !names.has(entry.name)).map((entry) => item(entry.name, 1, entry.title)),
  ];
}

/** Loadings as what stands before a figure, or after `for`. */
export function loadingItems(view: View, dot: boolean): Item[] {
  return view.analysis.sets.filter((set) => set.loading.block !== undefined).map((set): Item => ({
    label: set.loading.name, sort: "loading", rank: 3, text: dot ? `${set.loading.name}.` : undefined, topic: { about: "block", name: set.loading.name },
  }));
}

/** Codes of checks, for `waive`. */
export const checkItems = (): Item[] =>
  checks.map((check): Item => ({ label: check.code, sort: "check", rank: 0, detail: check.text, topic: { about: "check", name: check.code } }));

/** Thresholds that `limits` may set. */
export function limitItems(written: ReadonlySet<string>, replace?: Span): Item[] {
  return checks.flatMap((check) => check.thresholds.map((threshold): Item => {
    const name = limitName(check, threshold.name);
    return { label: name, sort: "check", rank: 0, detail: threshold.text, text: `${name} = `, replace, topic: { about: "check", name: check.code } };
  })).filter((item) => !written.has(item.label));
}

/** What is compared or set: the dimension of a figure or of a check's threshold. */
export function dimensionOfName(name: string): DimensionName | undefined {
  const figure = entryOf(name) ?? entryOf(name.slice(name.indexOf(".") + 1));
  if (figure) return figure.dimension;
  for (const check of checks) {
    const threshold = check.thresholds.find((each) => limitName(check, each.name) === name);
    if (threshold) return threshold.dimension;
  }
  return undefined;
}
