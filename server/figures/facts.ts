import type { MassFigures } from "../compute/mass/figures";
import type { ReferenceGeometry } from "../compute/planform/reference-geometry";
import type { Quantity } from "../../grammar/units/quantity";
import type { Settler } from "../model/settle";
import type { Shape } from "./shape";

/** What the figures rest on and checks look at besides. */
export interface Facts {
  mass?: MassFigures;
  shape?: Settler<Shape<Quantity>>;
  reference?: ReferenceGeometry;
}
