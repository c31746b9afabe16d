import type { Span, ValueNode } from "../../../grammar/tree";
import { compoundOf } from "../../../grammar/units/units";

/** A plain number with its unit in the text, that a fix may write anew. */
export interface Literal {
  /** From the sign to the end of the unit; a tolerance after it stays. */
  readonly span: Span;
  readonly unit: string;
  /** SI. */
  readonly value: number;
}

/** The literal a value is, perhaps with a sign or a tolerance; undefined for anything that is worked out. */
export function literalOf(node: ValueNode | undefined): Literal | undefined {
  if (node?.type === "binary" && node.operator === "±") return literalOf(node.left);
  const inner = node?.type === "negate" ? node.inner : node;
  const unit = inner?.type === "quantity" && inner.unit ? compoundOf(inner.unit.text) : undefined;
  if (!node || inner?.type !== "quantity" || !inner.unit || !unit) return undefined;
  const value = (inner === node ? 1 : -1) * inner.number.value * unit.scale;
  return { span: { start: node.start, end: inner.end }, unit: inner.unit.text, value };
}

/** The literal of one axis of a place, if the place is written out as a point. */
export function axisOf(node: ValueNode | undefined, axis: 0 | 1 | 2): Literal | undefined {
  return node?.type === "point" ? literalOf(node.items[axis]) : undefined;
}

/** An SI value as the language writes it in a unit, rounded to about `step` (SI). */
export function literalText(value: number, unit: string, step: number): string {
  const { scale } = compoundOf(unit)!;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step / scale) - 1e-9));
  // Number() drops zeros at the end; adding 0 makes nothing of "-0".
  return `${Number((value / scale).toFixed(decimals)) + 0} ${unit}`;
}
