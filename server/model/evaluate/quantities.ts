import type { QuantityNode, UnitNode } from "../../../grammar/tree";
import { dimensions, type Dimension } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { findUnit } from "../../../grammar/units/units";

/** Scale to SI and dimension of a unit as written; undefined if a symbol is unknown (the parser has said so). */
export function unitOf(node: UnitNode): { scale: number; offset: number; dimension: Dimension } | undefined {
  let scale = 1;
  const sum = [0, 0, 0, 0, 0, 0];
  for (const term of node.terms) {
    const unit = findUnit(term.symbol);
    if (!unit) return undefined;
    scale *= unit.scale ** term.exponent;
    unit.dimension.forEach((n, i) => (sum[i] += n * term.exponent));
  }
  // Only a temperature that stands alone has a zero of its own; in a compound it is a difference.
  const offset = node.terms.length === 1 ? findUnit(node.terms[0].symbol)?.offset ?? 0 : 0;
  return { scale, offset, dimension: sum as unknown as Dimension };
}

/** The quantity a number and its unit stand for. `difference`: degC and degF mean kelvins. `sign` goes before an offset. */
export function quantityOf(node: QuantityNode, difference: boolean, sign: 1 | -1 = 1): Quantity | undefined {
  if (!node.unit) return quantity(sign * node.number.value, dimensions.ratio);
  const unit = unitOf(node.unit);
  if (!unit) return undefined;
  return quantity(sign * node.number.value * unit.scale + (difference ? 0 : unit.offset), unit.dimension);
}
