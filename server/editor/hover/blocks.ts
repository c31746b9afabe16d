import { entryOf } from "../../../shared/catalogue";
import { isQuantity } from "../../../grammar/units/quantity";
import { kinds } from "../../../grammar/vocabulary";
import { notComputedYet } from "../../../grammar/vocabulary/schema";
import type { Figure } from "../../figures/figure";
import type { FigureSet } from "../../figures/figure-set";
import { pathOf, type Instance } from "../../model/resolve/instance";
import type { Card, Part, Row } from "../../report/card";
import { canonical } from "../names/canonical";
import type { View } from "../view";
import { readText } from "./value-text";

/** A block by its name: what it is, and every figure there is of it in the loading shown. */
export function blockCard(view: View, block: Instance): Card {
  const kind = kinds[block.kind];
  const title = block.node?.title ? ` "${block.node.title.text}"` : "";
  const rows = block.kind === "loading" ? headline(view, view.analysis.set(block.key)) : [...figureRows(view, block), ...valueRows(view, block)];
  const loading = view.analysis.sets.length > 1 && rows.length > 0 && block.kind !== "loading" ? [`In loading ${view.set.loading.name}`] : [];
  const parts: Part[] = [
    ...(kind ? [kind.text] : []),
    ...(kind?.later ? [notComputedYet] : []),
    ...(block.origin ? [`A copy of \`${pathOf(block.origin)}\`.`] : []),
    ...(rows.length > 0 ? [...loading, { rows }] : []),
  ];
  return { title: `${block.kind}${block.named ? ` \`${block.key}\`` : ""}${title}`, parts };
}

const headlines = ["mass.total", "cg.x", "cg.chord", "wing.loading", "stability.static_margin", "power.thrust_to_weight"];

function headline(view: View, set: FigureSet): Row[] {
  return headlines.flatMap((name): Row[] => {
    const figure = set.get(name);
    return figure ? [[figure.entry.title, view.analysis.say(figure.quantity, figure.entry.style)]] : [];
  });
}

/** The figures of the part: `mass.main`, `power.nose.static_rpm`; of each copy where it has several. */
function figureRows(view: View, block: Instance): Row[] {
  const paths = pathsOf(view.set, block);
  return paths.flatMap((path) => view.set.all().flatMap((figure): Row[] => {
    const label = ofPart(figure, path);
    const which = paths.length > 1 ? ` of ${path}` : "";
    return label === undefined ? [] : [[`${label}${which}`, view.analysis.say(figure.quantity, figure.entry.style)]];
  }));
}

/** What the figure tells of the part at that path; undefined if it is of something else. */
function ofPart(figure: Figure, path: string): string | undefined {
  const pattern = entryOf(figure.name)?.name;
  if (!pattern?.includes("<path>") || pattern.replace("<path>", path) !== figure.name) return undefined;
  const [before, after] = pattern.split("<path>");
  const word = (after || before).replace(/^\.|\.$/g, "").replace(/_/g, " ");
  return word === "mass" ? "weight" : word;
}

/** How the part is called in the design: by its own path, or by those of the placed copies of it. */
export function pathsOf(set: FigureSet, block: Instance): string[] {
  const first = canonical(block);
  const own = pathOf(first);
  if (first.kind === "sortie" || set.get(`mass.${own}`) || set.loading.blocks.has(own)) return [own];
  return [...set.loading.blocks].filter(([, part]) => part.node === first.node).map(([path]) => path);
}

/** What follows from the block and can be read from it: `main.span`. */
function valueRows(view: View, block: Instance): Row[] {
  const { world } = view.set.loading.reader;
  return world.derivedNames(block).flatMap((name): Row[] => {
    const value = world.derived(block, name);
    const text = isQuantity(value) || value ? readText(value, view.analysis.say, isQuantity(value) ? undefined : { form: "point" }) : undefined;
    return text === undefined ? [] : [[name.replace(/_/g, " "), text]];
  });
}
