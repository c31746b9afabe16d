import type { QuantityNode, UnitNode } from "../../../grammar/tree";
import { dimensions } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { combineUnits } from "../../../grammar/units/units";

type Combined = ReturnType<typeof combineUnits>;

const known = new Map<string, Combined>();

/** What a unit text stands for; each is worked out once, and nobody writes more than a few of them. */
function unitOf({ text, terms }: UnitNode): Combined {
  let unit = known.get(text);
  if (!unit) {
    unit = combineUnits(terms);
    if (known.size < 1000) known.set(text, unit);
  }
  return unit;
}

/** The quantity a number and its unit stand for. `difference`: degC and degF mean kelvins. `sign` goes before an offset. */
export function quantityOf(node: QuantityNode, difference: boolean, sign: 1 | -1 = 1): Quantity | undefined {
  if (!node.unit) return quantity(sign * node.number.value, dimensions.ratio);
  const unit = unitOf(node.unit);
  // The parser has said it where a symbol is no unit.
  if ("unknown" in unit) return undefined;
  return quantity(sign * node.number.value * unit.scale + (difference ? 0 : unit.offset), unit.dimension);
}
