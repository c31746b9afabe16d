import type { QuantityNode } from "../../../grammar/tree";
import { dimensions } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { combineUnits } from "../../../grammar/units/units";

/** The quantity a number and its unit stand for. `difference`: degC and degF mean kelvins. `sign` goes before an offset. */
export function quantityOf(node: QuantityNode, difference: boolean, sign: 1 | -1 = 1): Quantity | undefined {
  if (!node.unit) return quantity(sign * node.number.value, dimensions.ratio);
  const unit = combineUnits(node.unit.terms);
  // The parser has said it where a symbol is no unit.
  if ("unknown" in unit) return undefined;
  return quantity(sign * node.number.value * unit.scale + (difference ? 0 : unit.offset), unit.dimension);
}
