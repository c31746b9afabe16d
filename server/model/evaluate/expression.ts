import type { BinaryNode, NamedNode, Span, ValueNode } from "../../../grammar/tree";
import { dimensionName, dimensions, sameDimension } from "../../../grammar/units/dimension";
import {
  add, divide, multiply, negate, quantity, raise, subtract, type Quantity,
} from "../../../grammar/units/quantity";
import type { Form } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Vec3 } from "../design/geometry";
import { call } from "./calls";
import { named } from "./named";
import { quantityOf } from "./quantities";
import type { Complain, Site, World } from "./site";

/** One expression being worked out: where, for what, and how to complain. */
export interface Expression {
  readonly world: World;
  readonly site: Site;
  /** What the property takes: decides whether a bare name is a word, a block or a number. */
  readonly form?: Form;
  readonly complain: Complain;
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
      return node.operator === "±" ? toleranced(node, at) : combined(node, at);
    case "pair": {
      const left = evaluate(node.left, at);
      const right = evaluate(node.right, at);
      return left && right && { form: "pair", operator: node.operator, left, right };
    }
    case "point": {
      const items = node.items.map((item) => lengthOf(item, at));
      return items.every((q) => q !== undefined) ? { form: "point", point: items as unknown as Vec3<Quantity> } : undefined;
    }
    case "list": {
      const items = node.items.map((item) => evaluate(item, at));
      return items.every((v) => v !== undefined) ? { form: "list", items: items as Value[] } : undefined;
    }
    case "named":
      return node.args ? call(node as NamedNode & { args: readonly ValueNode[] }, at) : named(node, at);
  }
}

const measured = (q: Quantity | undefined): Value | undefined => q && { form: "quantity", quantity: q };

/** The number an expression stands for; says so where it is something else. */
export function numberOf(node: ValueNode, at: Expression): Quantity | undefined {
  const value = evaluate(node, { ...at, form: undefined });
  if (!value) return undefined;
  if (value.form === "quantity") return value.quantity;
  return at.complain("wrong_value", node, `a number belongs here, not a ${value.form}`);
}

function lengthOf(node: ValueNode, at: Expression): Quantity | undefined {
  const q = numberOf(node, at);
  if (!q || sameDimension(q.dimension, dimensions.length)) return q;
  // Nothing is nothing in any unit, so `(0, 0, 58 mm)` reads as meant.
  if (q.value === 0 && !q.spread && sameDimension(q.dimension, dimensions.ratio)) return quantity(0, dimensions.length);
  if (sameDimension(q.dimension, dimensions.ratio)) {
    return at.complain("missing_unit", node, `a place is made of lengths: ${q.value} has no unit; write ${q.value} mm?`);
  }
  return at.complain("wrong_dimension", node, `a place is made of lengths, not of a ${dimensionName(q.dimension)}`);
}

function negated(inner: ValueNode, at: Expression, node: Span): Value | undefined {
  // degC takes the sign of its number: −5 degC is below freezing, not the negative of 5 degC in kelvins.
  if (inner.type === "quantity") return measured(quantityOf(inner, false, -1));
  const value = evaluate(inner, at);
  if (!value) return undefined;
  if (value.form === "quantity") return measured(negate(value.quantity));
  if (value.form === "point") return { form: "point", point: each(value.point, negate) };
  return at.complain("wrong_value", node, `a ${value.form} has no negative`);
}

function powered(base: ValueNode, exponent: number, at: Expression, node: Span): Value | undefined {
  const q = numberOf(base, at);
  if (!q) return undefined;
  const result = raise(q, exponent);
  if (!Number.isFinite(result.value)) return at.complain("wrong_value", node, "this power has no finite value");
  return measured(result);
}

const each = (p: Vec3<Quantity>, f: (q: Quantity) => Quantity): Vec3<Quantity> => [f(p[0]), f(p[1]), f(p[2])];

/** A tolerance or a difference, where a degree is a kelvin. */
function difference(node: ValueNode, at: Expression): Value | undefined {
  return node.type === "quantity" ? measured(quantityOf(node, true)) : evaluate(node, at);
}

function combined(node: BinaryNode, at: Expression): Value | undefined {
  const inner: Expression = { ...at, form: undefined };
  const additive = node.operator === "+" || node.operator === "-";
  const left = evaluate(node.left, inner);
  const right = additive ? difference(node.right, inner) : evaluate(node.right, inner);
  if (!left || !right) return undefined;
  if (left.form === "point" || right.form === "point") return ofPoints(node, left, right, at);
  if (left.form !== "quantity" || right.form !== "quantity") {
    const odd = left.form === "quantity" ? right : left;
    return at.complain("wrong_value", node.at, `"${node.operator}" needs numbers or points, not a ${odd.form}`);
  }
  const [a, b] = [left.quantity, right.quantity];
  if (additive) {
    if (!sameDimension(a.dimension, b.dimension)) return at.complain("wrong_dimension", node.at, cannotAdd(node, a, b));
    return measured(node.operator === "+" ? add(a, b) : subtract(a, b));
  }
  if (node.operator === "*") return measured(multiply(a, b));
  if (b.value === 0) return at.complain("wrong_value", node.right, "this is 0, and nothing can be divided by it");
  return measured(divide(a, b));
}

function cannotAdd(node: BinaryNode, a: Quantity, b: Quantity): string {
  const word = (q: Quantity) => (sameDimension(q.dimension, dimensions.ratio) ? "plain number" : dimensionName(q.dimension));
  return node.operator === "+"
    ? `a ${word(b)} can't be added to a ${word(a)}`
    : `a ${word(b)} can't be taken from a ${word(a)}`;
}

function ofPoints(node: BinaryNode, left: Value, right: Value, at: Expression): Value | undefined {
  const op = node.operator;
  if (left.form === "point" && right.form === "point" && (op === "+" || op === "-")) {
    const f = op === "+" ? add : subtract;
    return { form: "point", point: [0, 1, 2].map((i) => f(left.point[i], right.point[i])) as unknown as Vec3<Quantity> };
  }
  const ratio = (v: Value) => (v.form === "quantity" && sameDimension(v.quantity.dimension, dimensions.ratio) ? v.quantity : undefined);
  const factor = ratio(right);
  if (left.form === "point" && factor && op === "*") return { form: "point", point: each(left.point, (q) => multiply(q, factor)) };
  if (left.form === "point" && factor && op === "/" && factor.value !== 0) return { form: "point", point: each(left.point, (q) => divide(q, factor)) };
  const front = ratio(left);
  if (right.form === "point" && front && op === "*") return { form: "point", point: each(right.point, (q) => multiply(front, q)) };
  return at.complain("wrong_value", node.at, `points are added, subtracted or scaled by a plain number; "${op}" doesn't fit here`);
}

/** Half-width at 95 %: a new variable, named by where it is written. */
function toleranced(node: BinaryNode, at: Expression): Value | undefined {
  const inner: Expression = { ...at, form: undefined };
  const left = evaluate(node.left, inner);
  const right = difference(node.right, inner);
  if (!left || !right) return undefined;
  if (left.form !== "quantity" || right.form !== "quantity") {
    return at.complain("wrong_value", node.at, "a tolerance goes with a number, as in 420 g ± 5 g");
  }
  const [value, width] = [left.quantity, right.quantity];
  const share = isPercent(node.right) && !isPercent(node.left);
  if (!share && !sameDimension(value.dimension, width.dimension)) {
    return at.complain("wrong_dimension", node.at,
      `a ${dimensionName(value.dimension)} can't vary by a ${dimensionName(width.dimension)}; write a ${dimensionName(value.dimension)} or a share in %`);
  }
  const half = Math.abs(share ? width.value * value.value : width.value);
  const spread = new Map(value.spread);
  spread.set(`${at.site.home.file.uri}:${node.at.start}`, half);
  return measured(quantity(value.value, value.dimension, half > 0 ? spread : value.spread));
}

const isPercent = (node: ValueNode): boolean => node.type === "quantity" && node.unit?.text === "%";
