import type { ConditionNode, RequireNode, ValueNode } from "../../grammar/tree";
import { sameDimension } from "../../grammar/units/dimension";
import { halfWidth, subtract, type Quantity } from "../../grammar/units/quantity";
import { wordsFor } from "../../grammar/units/usual";
import { entryOf } from "../../shared/catalogue";
import type { Finding } from "../../shared/finding";
import type { FigureSet } from "../figures/figure-set";
import { bareNumber, likelyUnit, withoutUnit } from "../model/evaluate/wording";
import type { Model } from "../model/model";
import { findUnknownLoading } from "./loading-names";
import { readFigures, type FigureReading } from "./figure-names";
import type { Say } from "./say";

/** What the `require` lines of a file say of its loadings. Those that rest on figures still to come stay silent. */
export function checkRequirements(model: Model, sets: readonly FigureSet[], say: Say): Finding[] {
  return model.file.tree.items.flatMap((item) => (item.type === "require" ? checkOne(item, model, sets, say) : []));
}

/** Both sides of a condition in one loading. */
interface Sides {
  readonly set: FigureSet;
  readonly left: Quantity;
  readonly right: Quantity;
  readonly upper?: Quantity;
  readonly figure?: string;
  /** Is it the same in every loading? */
  readonly fixed: boolean;
}

function checkOne(node: RequireNode, model: Model, sets: readonly FigureSet[], say: Say): Finding[] {
  const { condition } = node;
  if (!condition) return [];
  for (const name of node.loadings) findUnknownLoading(name, model, sets);
  const asked = node.loadings.length > 0 ? sets.filter((s) => node.loadings.some((n) => n.text === s.loading.name)) : sets;
  const findings: Finding[] = [];
  const seen = new Set<unknown>();
  for (const set of asked) {
    const sides = readSides(condition, model, sets, set);
    if (!sides) continue;
    // Without a figure of this loading it is the same for all that read the same values: once is enough.
    const of = sides.fixed ? (sides.figure === undefined ? set.loading.reader : condition) : set;
    if (seen.has(of)) continue;
    seen.add(of);
    if (!alike(condition, sides, model)) return [];
    findings.push(...verdict(node, condition, sides, model, say));
  }
  return findings;
}

function readSides(condition: ConditionNode, model: Model, sets: readonly FigureSet[], set: FigureSet): Sides | undefined {
  const read = (value: ValueNode): FigureReading => readFigures(value, model, sets, set);
  const [left, right] = [read(condition.left), read(condition.right)];
  const upper = condition.upper && read(condition.upper);
  if (!left.quantity || !right.quantity || (upper && !upper.quantity)) return undefined;
  const fixed = [left, right, upper].every((reading) => reading?.fixed !== false);
  return { set, left: left.quantity, right: right.quantity, upper: upper?.quantity, figure: left.figure ?? right.figure, fixed };
}

/** Can the sides be compared? Says so where not: at the number without a unit, else at the comparison. */
function alike(condition: ConditionNode, { left, right, upper }: Sides, model: Model): boolean {
  const { file, problems } = model;
  const limits: [ValueNode | undefined, Quantity | undefined][] = [[condition.right, right], [condition.upper, upper]];
  for (const [node, limit] of limits) {
    if (!node || !limit || sameDimension(limit.dimension, left.dimension)) continue;
    const bare = bareNumber(node);
    const unit = bare && likelyUnit(left.dimension, condition.left);
    if (bare && unit) {
      const { message, fixes } = withoutUnit([bare], unit, file);
      problems.add("missing_unit", "error", file, node, message, fixes);
    } else {
      problems.add("wrong_dimension", "error", file, condition.at,
        `${said(condition.left, model)} is ${wordsFor(left.dimension)} and can't be compared with ${said(node, model)}, ${wordsFor(limit.dimension)}`);
    }
    return false;
  }
  if (!upper || right.value <= upper.value) return true;
  problems.add("wrong_value", "error", file, { start: condition.right.start, end: condition.upper!.end },
    `within goes from the lower limit .. to the upper one; ${said(condition.right, model)} is more than ${said(condition.upper!, model)}`);
  return false;
}

const said = (node: ValueNode, model: Model) => model.file.parsed.text.slice(node.start, node.end).replace(/\s+/g, " ");

/** How far inside a limit the value lies, with the band of both: negative outside. */
function margins({ operator }: ConditionNode, { left, right, upper }: Sides): Quantity[] {
  if (operator === "within") return [subtract(left, right), subtract(upper!, left)];
  return [operator.startsWith(">") ? subtract(left, right) : subtract(right, left)];
}

function verdict(node: RequireNode, condition: ConditionNode, sides: Sides, model: Model, say: Say): Finding[] {
  const { set, left, figure, fixed } = sides;
  const strict = condition.operator === "<" || condition.operator === ">";
  const all = margins(condition, sides);
  const ok = all.every(({ value }) => (strict ? value > 0 : value >= 0));
  const straddles = all.some((margin) => Math.abs(margin.value) < halfWidth(margin));
  if (ok && !straddles) return [];
  const style = figure === undefined ? undefined : entryOf(figure)?.style;
  const where = fixed || !set.loading.block ? "" : ` in ${set.loading.name}`;
  const why = node.because ? ` (${node.because.text})` : "";
  const limit = model.file.parsed.text.slice(condition.at.start, condition.end).replace(/\s+/g, " ");
  const fact = `${said(condition.left, model)} is ${say(left, style)}${where}`;
  const message = ok ? `${fact}: ${limit} holds, but the band reaches past the limit`
    : `${fact}; required is ${limit}${why}${straddles ? ", which the band reaches" : ""}`;
  return [{
    code: ok ? "require_close" : "require_failed", severity: ok ? "hint" : "error", message, figure, loading: set.loading.name,
    place: { file: model.file.uri, start: condition.start, end: condition.end },
  }];
}
