import type { InlayHint, Range } from "vscode-languageserver";
import type { RequireNode } from "../../grammar/tree";
import { entryOf } from "../../shared/catalogue";
import { readFigures } from "../checks/figure-names";
import type { FigureSet } from "../figures/figure-set";
import { positionOf, spanOf } from "../lines";
import type { View } from "./view";

/** Behind each condition of a `require`: what its left side comes to, in the loading shown or the first it is for. */
export function inlayHints(view: View, range: Range): InlayHint[] {
  const { start, end } = spanOf(view.parsed, range);
  return view.parsed.tree.items.flatMap((item): InlayHint[] => {
    if (item.type !== "require" || !item.condition || item.end < start || item.start > end) return [];
    const text = valueOf(view, item, setFor(view, item));
    return text === undefined ? [] : [{ position: positionOf(view.parsed, item.condition.end), label: `= ${text}`, paddingLeft: true }];
  });
}

function setFor({ analysis, set }: View, { loadings }: RequireNode): FigureSet {
  const names = loadings.map((name) => name.text);
  if (names.length === 0 || names.includes(set.loading.name)) return set;
  return analysis.sets.find((each) => names.includes(each.loading.name)) ?? set;
}

function valueOf({ analysis }: View, { condition }: RequireNode, set: FigureSet): string | undefined {
  const { quantity, figure } = readFigures(condition!.left, analysis.model, analysis.sets, set);
  return quantity && analysis.say(quantity, figure === undefined ? undefined : entryOf(figure)?.style);
}
