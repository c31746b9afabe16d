import { nearest } from "../../grammar/nearest";
import type { Span, ValueNode } from "../../grammar/tree";
import type { Quantity } from "../../grammar/units/quantity";
import { catalogue, entryOf, groupsToCome } from "../../shared/catalogue";
import type { FigureSet } from "../figures/figure-set";
import { absenceOf } from "../figures/absence";
import { evaluate, type Expression } from "../model/evaluate/expression";
import type { Resolver } from "../model/evaluate/resolver";
import type { Model } from "../model/model";

/** An expression over figures, worked out for one loading. */
export interface FigureReading {
  readonly quantity?: Quantity;
  /** Something it rests on is still being worked out. */
  readonly pending: boolean;
  /** Did every figure in it name its loading, so that it is the same for all? */
  readonly fixed: boolean;
  /** The first figure it names. */
  readonly figure?: string;
}

/**
 * Reads an expression in which a path that is a figure of the catalogue is that figure; a loading's name may stand
 * before it. What is absent is said at the path, with the reason.
 */
export function readFigures(node: ValueNode, model: Model, sets: readonly FigureSet[], set: FigureSet): FigureReading {
  let pending = false;
  let fixed = true;
  let first: string | undefined;
  const resolver = set.loading.reader.world as Resolver;
  const site = { holder: model.file.root, home: model.file.root };
  const figure = (path: string, span: Span): Quantity | "absent" | undefined => {
    const asked = splitLoading(path, sets);
    const name = asked.name;
    if (!isFigure(name)) return undefined;
    if (!asked.set) fixed = false;
    first ??= name;
    const from = asked.set ?? set;
    const value = from.value(name);
    if (value) return value;
    if (!from.complete) pending = true;
    else model.problems.add("figure_absent", "error", model.file, span, `there is no ${path}: ${absenceOf(name, from)}`);
    return "absent";
  };
  const at: Expression = { ...resolver.expression(site), figure };
  const value = evaluate(node, at);
  if (value && value.form !== "quantity") at.complain("wrong_value", node, "a number or a figure belongs here");
  return { quantity: value?.form === "quantity" ? value.quantity : undefined, pending, fixed, figure: first };
}

function splitLoading(path: string, sets: readonly FigureSet[]): { name: string; set?: FigureSet } {
  const dot = path.indexOf(".");
  const set = dot > 0 ? sets.find((s) => s.loading.name === path.slice(0, dot)) : undefined;
  return set && isFigure(path.slice(dot + 1)) ? { name: path.slice(dot + 1), set } : { name: path };
}

const groups = new Set([...catalogue.map((entry) => entry.name.split(".")[0]), ...groupsToCome]);

/** Is it a figure's name: one of the catalogue, or of a group that the definitions know? */
export function isFigure(name: string): boolean {
  return name.includes(".") && (entryOf(name) !== undefined || groups.has(name.split(".")[0]));
}

/** The nearest figure to a name that is none. */
export function nearestFigure(name: string): string | undefined {
  return nearest(name, catalogue.map((entry) => entry.name));
}
