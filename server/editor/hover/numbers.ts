import type { BinaryNode, QuantityNode } from "../../../grammar/tree";
import { halfWidth, quantity, type Quantity } from "../../../grammar/units/quantity";
import { otherUnits } from "../../../grammar/units/display";
import { evaluate } from "../../model/evaluate/expression";
import { quantityOf } from "../../model/evaluate/quantities";
import type { Card, Part } from "../../report/card";
import type { AnyNode } from "../nodes";
import type { View } from "../view";

/** A number in the other common units, with its tolerance. `chain` is what stands around the number, the widest first. */
export function numberCard(view: View, chain: readonly AnyNode[]): Card | undefined {
  const inward = [...chain].reverse();
  const node = inward.find(isQuantityNode);
  if (!node) return undefined;
  const tolerance = inward.find(isTolerance);
  const isBand = tolerance !== undefined && tolerance.right.start <= node.start;
  const sign = inward[inward.indexOf(node) + 1]?.type === "negate" ? -1 : 1;
  const own = quantityOf(node, isBand, sign);
  const others = own ? otherUnits(own, node.unit?.text ?? "") : [];
  const parts: Part[] = [
    ...(others.length > 0 ? [others.map((text) => `= ${text}`).join("   ")] : []),
    ...(tolerance ? bandOf(view, tolerance) : []),
  ];
  if (parts.length === 0) return undefined;
  return { title: `${sign < 0 ? "-" : ""}${view.parsed.text.slice(node.start, node.end)}`, parts };
}

const isQuantityNode = (node: AnyNode): node is QuantityNode => node.type === "quantity";
const isTolerance = (node: AnyNode): node is BinaryNode => node.type === "binary" && (node as BinaryNode).operator === "±";

/** Both ends of the band and its share of the value. */
function bandOf(view: View, node: BinaryNode): Part[] {
  const { say, model } = view.analysis;
  const { root } = model.file;
  const value = evaluate(node, { world: view.set.loading.reader.world, site: { holder: root, home: root }, complain: () => undefined });
  if (value?.form !== "quantity") return [];
  const q = value.quantity;
  const half = halfWidth(q);
  const end = (offset: number): string => say(quantity(q.value + offset, q.dimension));
  return [`From ${end(-half)} to ${end(half)}${share(q, half)}: a band that holds 95 of 100 cases`];
}

function share(q: Quantity, half: number): string {
  if (q.value === 0) return "";
  return `, ± ${Number(((100 * half) / Math.abs(q.value)).toPrecision(2))} % of the value`;
}
