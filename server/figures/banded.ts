import { dimensions, type DimensionName } from "../../grammar/units/dimension";
import { quantity, type Quantity } from "../../grammar/units/quantity";
import type { Banded } from "../compute/tolerance/propagate";

/** A computed number as a quantity of its dimension. */
export const quantityOf = (banded: Banded | undefined, dimension: DimensionName): Quantity | undefined =>
  banded && quantity(banded.value, dimensions[dimension], banded.spread);
