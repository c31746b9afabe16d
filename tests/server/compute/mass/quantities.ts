import { dimensions, type DimensionName } from "../../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../../grammar/units/quantity";
import type { MassParts } from "../../../../server/compute/mass/element";

/** A quantity whose spread is written as `{ variable: change }`. */
export function q(value: number, dimension: DimensionName, spread: Readonly<Record<string, number>> = {}): Quantity {
  return quantity(value, dimensions[dimension], new Map(Object.entries(spread)));
}

export const qParts = (some: Partial<MassParts<Quantity>> = {}): MassParts<Quantity> => ({
  surfaces: [], bodies: [], members: [], loads: [], allowance: q(0, "ratio"), ...some,
});

/** A weighed thing on the x axis; each spread is a variable of its own unless named. */
export function qLoad(path: string, weight: number, x: number, dWeight = 0, dX = 0) {
  return {
    path, kind: "item",
    weight: q(weight, "mass", dWeight ? { [`${path}.weight`]: dWeight } : {}),
    at: [q(x, "length", dX ? { [`${path}.x`]: dX } : {}), q(0, "length"), q(0, "length")] as const,
  };
}
