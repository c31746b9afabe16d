import type { BinaryNode, ValueNode } from "../../../grammar/tree";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import { add, divide, multiply, negate, quantity, subtract, type Quantity } from "../../../grammar/units/quantity";
import { wordsFor } from "../../../grammar/units/usual";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Vec3 } from "../design/geometry";
import { evaluate, measured, nameOf, type Expression } from "./expression";
import { quantityOf } from "./quantities";
import { bareNumber, likelyUnit, massForForce, withoutUnit, wordsOf } from "./wording";

/** Two numbers or points with `+`, `-`, `*` or `/` between; what doesn't go together is said at the operator. */
export function combined(node: BinaryNode, at: Expression): Value | undefined {
  const additive = node.operator === "+" || node.operator === "-";
  const left = evaluate(node.left, at);
  const right = additive ? difference(node.right, at) : evaluate(node.right, at);
  if (!left || !right) return undefined;
  if (left.form === "point" || right.form === "point") return ofPoints(node, left, right, at);
  if (left.form !== "quantity" || right.form !== "quantity") {
    const odd = left.form === "quantity" ? right : left;
    return at.complain("wrong_value", node.at, `${node.operator} needs numbers or points, not ${nameOf(odd)}`);
  }
  const [a, b] = [left.quantity, right.quantity];
  if (additive) {
    if (sameDimension(a.dimension, b.dimension)) return measured(node.operator === "+" ? add(a, b) : subtract(a, b));
    return unlike(node, a, b, node.operator === "+" ? "can't be added to" : "can't be taken from", at);
  }
  if (node.operator === "*") return measured(multiply(a, b));
  if (b.value === 0) return at.complain("wrong_value", node.right, "this is 0, and nothing can be divided by 0");
  return measured(divide(a, b));
}

/** A tolerance or a difference, where a degree is a kelvin. */
function difference(node: ValueNode, at: Expression): Value | undefined {
  if (node.type === "quantity") return measured(quantityOf(node, true));
  if (node.type === "group") return difference(node.inner, at);
  if (node.type !== "negate") return evaluate(node, at);
  const inner = difference(node.inner, at);
  return inner?.form === "quantity" ? measured(negate(inner.quantity)) : evaluate(node, at);
}

/** Says that `b` does not go with `a`: at the number that lacks a unit, else at the operator. */
function unlike(node: BinaryNode, a: Quantity, b: Quantity, cannot: string, at: Expression, instead = ""): undefined {
  const { file } = at.site.home;
  for (const [bare, other, beside] of [[node.right, a, node.left], [node.left, b, node.right]] as const) {
    const number = bareNumber(bare);
    const unit = number && likelyUnit(other.dimension, beside);
    if (!number || !unit) continue;
    const { message, fixes } = withoutUnit([number], unit, file);
    return at.complain("missing_unit", number, message, fixes);
  }
  const say = (part: ValueNode, q: Quantity) => {
    const text = wordsOf(part, file);
    return text ? `${text} (${wordsFor(q.dimension)})` : wordsFor(q.dimension);
  };
  const meant = massForForce(node.right, a.dimension, file) ?? massForForce(node.left, b.dimension, file);
  const message = `${say(node.right, b)} ${cannot} ${say(node.left, a)}${meant ? `; did you mean ${meant.text}?` : instead}`;
  return at.complain("wrong_dimension", node.at, message, meant && [meant.fix]);
}

const each = (p: Vec3<Quantity>, f: (q: Quantity, i: number) => Quantity): Vec3<Quantity> => [f(p[0], 0), f(p[1], 1), f(p[2], 2)];

function ofPoints(node: BinaryNode, left: Value, right: Value, at: Expression): Value | undefined {
  const op = node.operator;
  const point = (p: Vec3<Quantity>): Value => ({ form: "point", point: p });
  if (left.form === "point" && right.form === "point") {
    if (op === "+") return point(each(left.point, (q, i) => add(q, right.point[i])));
    if (op === "-") return point(each(left.point, (q, i) => subtract(q, right.point[i])));
  }
  const [by, factor] = [plainNumber(right), plainNumber(left)];
  if (left.form === "point" && by && op === "*") return point(each(left.point, (q) => multiply(q, by)));
  if (left.form === "point" && by && op === "/" && by.value !== 0) return point(each(left.point, (q) => divide(q, by)));
  if (right.form === "point" && factor && op === "*") return point(each(right.point, (q) => multiply(factor, q)));
  const hint = op === "+" || op === "-" ? "; to move a point, add another, as in (10 mm, 0 mm, 0 mm)" : "";
  return at.complain("wrong_value", node.at, `${op} can't stand between ${nameOf(left)} and ${nameOf(right)}: points are added, subtracted, or scaled by a plain number${hint}`);
}

const plainNumber = (v: Value) => (v.form === "quantity" && sameDimension(v.quantity.dimension, dimensions.ratio) ? v.quantity : undefined);

/** Half-width at 95 %: a new variable, named by what it is written in. */
export function toleranced(node: BinaryNode, at: Expression): Value | undefined {
  const left = evaluate(node.left, at);
  const right = difference(node.right, at);
  if (!left || !right) return undefined;
  if (left.form !== "quantity" || right.form !== "quantity") {
    const each = "a point has a tolerance in each number, as in (60 mm ± 2 mm, 0 mm, 0 mm)";
    return at.complain("wrong_value", node.at, left.form === "point" ? each : "a tolerance goes with a number, as in 420 g ± 5 g");
  }
  const [value, width] = [left.quantity, right.quantity];
  const share = isShare(node, value, width, at);
  if (share && sameDimension(value.dimension, dimensions.temperature)) {
    return at.complain("wrong_value", node.at, "a share of a temperature says nothing; write its tolerance in degC, as in 25 degC ± 3 degC");
  }
  if (!share && !sameDimension(value.dimension, width.dimension)) {
    return unlike(node, value, width, "can't be the tolerance of", at, `; write ${wordsFor(value.dimension)} or a share in %`);
  }
  const half = Math.abs(share ? width.value * value.value : width.value);
  if (half === 0) return measured(value);
  const variable = at.variable?.() ?? `${at.site.home.file.uri} ${node.at.start}`;
  return measured(quantity(value.value, value.dimension, new Map([...(value.spread ?? []), [variable, half]])));
}

/** Is the tolerance a share of the value? Only where the value itself is written in % does % mean points. */
function isShare(node: BinaryNode, value: Quantity, width: Quantity, at: Expression): boolean {
  if (!sameDimension(width.dimension, dimensions.ratio) || bareNumber(node.right)) return false;
  if (!sameDimension(value.dimension, dimensions.ratio)) return true;
  return inPercent(node.right, at) && !inPercent(node.left, at);
}

function inPercent(node: ValueNode, at: Expression, aside = 0): boolean {
  switch (node.type) {
    case "quantity":
      return node.unit?.text === "%";
    case "negate":
    case "group":
      return inPercent(node.inner, at, aside);
    case "binary":
      return inPercent(node.left, at, aside);
    case "named": {
      const value = node.args || node.path.names.length > 1 ? undefined : at.site.home.file.lets.get(node.path.names[0].text)?.value;
      return value !== undefined && aside < 4 && inPercent(value, at, aside + 1);
    }
    default:
      return false;
  }
}
