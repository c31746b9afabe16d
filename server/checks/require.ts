import type { RequireNode, ValueNode } from "../../grammar/tree";
import { dimensionName, sameDimension } from "../../grammar/units/dimension";
import { halfWidth, type Quantity } from "../../grammar/units/quantity";
import { entryOf } from "../../shared/catalogue";
import type { Finding } from "../../shared/finding";
import type { FigureSet } from "../figures/figure-set";
import type { Model } from "../model/model";
import { findUnknownLoading } from "./loading-names";
import { readFigures } from "./figure-names";
import type { Say } from "./say";

/** What the `require` lines of a file say of its loadings. Those that rest on figures still to come stay silent. */
export function checkRequirements(model: Model, sets: readonly FigureSet[], say: Say): Finding[] {
  return model.file.tree.items.flatMap((item) => (item.type === "require" ? checkOne(item, model, sets, say) : []));
}

function checkOne(node: RequireNode, model: Model, sets: readonly FigureSet[], say: Say): Finding[] {
  const condition = node.condition;
  if (!condition) return [];
  for (const name of node.loadings) findUnknownLoading(name, model, sets);
  const asked = node.loadings.length > 0 ? sets.filter((s) => node.loadings.some((n) => n.text === s.loading.name)) : sets;
  const findings: Finding[] = [];
  for (const set of asked) {
    const read = (value: ValueNode) => readFigures(value, model, sets, set);
    const left = read(condition.left);
    const right = read(condition.right);
    const upper = condition.upper && read(condition.upper);
    const a = left.quantity;
    const b = right.quantity;
    if (!a || !b || (condition.upper && !upper?.quantity)) continue;
    const odd = [b, upper?.quantity].find((q) => q && !sameDimension(q.dimension, a.dimension));
    if (odd) {
      model.problems.add("wrong_dimension", "error", model.file, condition.at,
        `a ${dimensionName(a.dimension)} can't be compared with a ${dimensionName(odd.dimension)}`);
      return findings;
    }
    const fixed = [left, right, upper].every((reading) => reading?.fixed !== false);
    findings.push(...verdict(node, model, set, left.figure, a, b, upper?.quantity, fixed, say));
    // The same in every loading: once is enough.
    if (fixed) break;
  }
  return findings;
}

function verdict(
  node: RequireNode, model: Model, set: FigureSet, figure: string | undefined, value: Quantity, limit: Quantity, upper: Quantity | undefined, fixed: boolean,
  say: Say,
): Finding[] {
  const condition = node.condition!;
  const holds = (v: number): boolean => {
    switch (condition.operator) {
      case "<": return v < limit.value;
      case "<=": return v <= limit.value;
      case ">": return v > limit.value;
      case ">=": return v >= limit.value;
      case "within": return v >= limit.value && v <= upper!.value;
    }
  };
  const ok = holds(value.value);
  const band = halfWidth(value);
  const straddles = band > 0 && (holds(value.value - band) !== ok || holds(value.value + band) !== ok);
  if (ok && !straddles) return [];
  const text = model.file.parsed.text;
  const style = figure === undefined ? undefined : entryOf(figure)?.style;
  const wording = text.slice(condition.start, condition.end);
  const where = fixed || isOnly(set) ? "" : ` in ${set.loading.name}`;
  const why = node.because ? ` (${node.because.text})` : "";
  const what = text.slice(condition.left.start, condition.left.end);
  const message = ok
    ? `${what} is ${say(value, style)}${where}: it holds, but its band reaches past the limit`
    : `${what} is ${say(value, style)}${where}; required is ${wording.slice(what.length).trim()}${why}`;
  return [{
    code: ok ? "require_close" : "require_failed", severity: ok ? "hint" : "error", message, figure, loading: set.loading.name,
    place: { file: model.file.uri, start: condition.start, end: condition.end },
  }];
}

/** A design without `loading` blocks has one that nobody named. */
const isOnly = (set: FigureSet): boolean => set.loading.block === undefined;
