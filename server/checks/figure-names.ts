import { nearest } from "../../grammar/nearest";
import type { Span, ValueNode } from "../../grammar/tree";
import type { Quantity } from "../../grammar/units/quantity";
import { catalogue, entryOf, groupsToCome } from "../../shared/catalogue";
import type { FigureSet } from "../figures/figure-set";
import { absenceOf } from "../figures/absence";
import { evaluate, type Expression } from "../model/evaluate/expression";
import { wordsOf } from "../model/evaluate/wording";
import type { Model } from "../model/model";
import { rewrite } from "../model/problems";
import { namesAround } from "../model/resolve/names";

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
  const { world } = set.loading.reader;
  const site = { holder: model.file.root, home: model.file.root };
  const figure = (path: string, span: Span): Quantity | "absent" | undefined => {
    const asked = splitLoading(path, sets);
    if (!entryOf(asked.name)) return asked.set || !isReference(path, model) ? noFigure(asked.name, span, model) : undefined;
    if (!asked.set) fixed = false;
    first ??= asked.name;
    const from = asked.set ?? set;
    const value = from.value(asked.name);
    if (value) return value;
    if (!from.complete) pending = true;
    else model.problems.add("figure_absent", "error", model.file, span, `there is no ${path}: ${absenceOf(asked.name, from)}`);
    return "absent";
  };
  const at: Expression = { ...world.expression(site), figure };
  const value = evaluate(node, at);
  if (value && value.form !== "quantity") {
    const text = wordsOf(node, model.file);
    at.complain("wrong_value", node, `a number or a figure belongs here${text ? `; ${text} is neither` : ""}`);
  }
  return { quantity: value?.form === "quantity" ? value.quantity : undefined, pending, fixed, figure: first };
}

function splitLoading(path: string, sets: readonly FigureSet[]): { name: string; set?: FigureSet } {
  const dot = path.indexOf(".");
  const set = dot > 0 ? sets.find((s) => s.loading.name === path.slice(0, dot)) : undefined;
  return set && isFigure(path.slice(dot + 1)) ? { name: path.slice(dot + 1), set } : { name: path };
}

/** Does a path begin with a name of the design? */
function isReference(path: string, model: Model): boolean {
  const { root, lets, uses } = model.file;
  const head = path.split(".")[0];
  return root.children.has(head) || lets.has(head) || uses.has(head);
}

/** Says that there is no such figure, where one was meant: by its group, or by what is nearest. */
function noFigure(name: string, span: Span, model: Model): "absent" | undefined {
  const group = name.split(".")[0];
  if (!isFigure(name) && nearest(group, namesAround(model.file.root))) return undefined;
  const near = nearestFigure(name);
  if (near) {
    const start = span.end - name.length;
    model.problems.add("unknown_name", "error", model.file, span, `there is no figure "${name}"; did you mean ${near}?`,
      [rewrite(model.file, { start, end: span.end }, `Write ${near}`, near)]);
  } else if (!isFigure(name)) return undefined;
  else if (groupsToCome.includes(group)) model.problems.add("figure_absent", "error", model.file, span, `there is no ${name}: it is not computed yet`);
  else {
    const others = catalogue.map((entry) => entry.name).filter((known) => known.startsWith(`${group}.`));
    model.problems.add("unknown_name", "error", model.file, span, `there is no figure "${name}"; in this group are ${others.join(", ")}`);
  }
  return "absent";
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
