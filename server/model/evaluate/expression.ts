import type { NamedNode, Span, ValueNode } from "../../../grammar/tree";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import { negate, plain, quantity, raise, type Quantity } from "../../../grammar/units/quantity";
import { wordsFor } from "../../../grammar/units/usual";
import type { Form } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Vec3 } from "../design/geometry";
import { withArticle } from "../words";
import { combined, toleranced } from "./arithmetic";
import { call } from "./calls";
import { named } from "./named";
import { quantityOf } from "./quantities";
import type { Complain, Site, World } from "./site";
import { bareNumber, withoutUnit, wordsOf } from "./wording";

/** One expression being worked out: where, for what, and how to complain. */
export interface Expression {
  readonly world: World;
  readonly site: Site;
  /** What the property takes: decides whether a bare name is a word, a block or a number. */
  readonly form?: Form;
  readonly complain: Complain;
  /** A name for each ± in it, in turn, that stays the same while only comments and spaces around it change. */
  readonly variable?: () => string;
  /** In `require`, `limits` and `weighed`: the figure of that name. `undefined` if it is none; `absent` has been said. */
  readonly figure?: (name: string, span: Span) => Quantity | "absent" | undefined;
}

/** Works a value out; undefined when some part of it is broken, which has been said by then, once. */
export function evaluate(node: ValueNode, at: Expression): Value | undefined {
  switch (node.type) {
    case "missing":
      return undefined;
    case "string":
      return { form: "text", text: node.text };
    case "flag":
      return { form: "flag", yes: node.yes };
    case "quantity":
      return measured(quantityOf(node, false));
    case "group":
      return evaluate(node.inner, at);
    case "negate":
      return negated(node.inner, at, node);
    case "power":
      return powered(node.base, node.exponent, at, node);
    case "binary":
      return node.operator === "±" ? toleranced(node, plainly(at)) : combined(node, plainly(at));
    case "pair": {
      const left = evaluate(node.left, at);
      const right = evaluate(node.right, at);
      return left && right && { form: "pair", operator: node.operator, left, right };
    }
    case "point":
      return place(node.items, at);
    case "list": {
      const items = node.items.map((item) => evaluate(item, at));
      return items.every((v) => v !== undefined) ? { form: "list", items } : undefined;
    }
    case "named":
      return node.args ? call(node as NamedNode & { args: readonly ValueNode[] }, at) : named(node, at);
  }
}

/** Inside arithmetic a name is a number's, whatever the property takes. */
const plainly = (at: Expression): Expression => (at.form ? { ...at, form: undefined } : at);

export const measured = (q: Quantity | undefined): Value | undefined => q && { form: "quantity", quantity: q };

const forms = {
  point: "a point", pair: "two values", text: "text", flag: "yes or no", word: "a word", naca: "a section", flat: "a section", list: "a list",
} as const;

/** A value as a message names it: "a length", "a point", "a servo". */
export function nameOf(value: Value): string {
  if (value.form === "quantity") return wordsFor(value.quantity.dimension);
  return value.form === "block" ? withArticle(value.block.kind) : forms[value.form];
}

/** The number an expression stands for; says so where it is something else. */
export function numberOf(node: ValueNode, at: Expression): Quantity | undefined {
  const value = evaluate(node, plainly(at));
  if (!value || value.form === "quantity") return value?.quantity;
  return at.complain("wrong_value", node, `a number belongs here, not ${nameOf(value)}`);
}

/** A point out of three lengths. Nothing is nothing in any unit, so `(0, 0, 58 mm)` reads as meant. */
function place(items: readonly ValueNode[], at: Expression): Value | undefined {
  const inner = plainly(at);
  const read = items.map((item) => numberOf(item, inner));
  if (!read.every((q) => q !== undefined)) return undefined;
  const lengths = read.map((q) => (q.value === 0 && !q.spread && sameDimension(q.dimension, dimensions.ratio) ? quantity(0, dimensions.length) : q));
  const odd = lengths.findIndex((q) => !sameDimension(q.dimension, dimensions.length));
  if (odd < 0) return { form: "point", point: lengths as unknown as Vec3<Quantity> };
  if (!bareNumber(items[odd])) return at.complain("wrong_dimension", items[odd],
    `a point is made of lengths; ${wordsOf(items[odd], at.site.home.file) ?? "this"} is ${wordsFor(lengths[odd].dimension)}`);
  const bare = items.flatMap((item, i) => (read[i] !== lengths[i] ? [] : bareNumber(item) ?? []));
  const { message, fixes } = withoutUnit(bare, "mm", at.site.home.file);
  return at.complain("missing_unit", { start: bare[0].start, end: bare[bare.length - 1].end }, message, fixes);
}

function negated(inner: ValueNode, at: Expression, node: Span): Value | undefined {
  // degC takes the sign of its number: −5 degC is below freezing, not the negative of 5 degC in kelvins.
  if (inner.type === "quantity") return measured(quantityOf(inner, false, -1));
  const value = evaluate(inner, at);
  if (!value) return undefined;
  if (value.form === "quantity") return measured(negate(value.quantity));
  if (value.form === "point") return { form: "point", point: [negate(value.point[0]), negate(value.point[1]), negate(value.point[2])] };
  return at.complain("wrong_value", node, `${nameOf(value)} has no negative`);
}

function powered(base: ValueNode, exponent: number, at: Expression, node: Span): Value | undefined {
  const q = numberOf(base, at);
  if (!q) return undefined;
  const result = exponent === 0 ? plain(1) : raise(q, exponent);
  return Number.isFinite(result.value) ? measured(result) : at.complain("wrong_value", node, "this power is no finite number");
}
