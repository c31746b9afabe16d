import type { Quantity } from "../../grammar/units/quantity";
import type { Side } from "../compute/derivatives/side";
import type { MassFigures } from "../compute/mass/figures";
import type { ReferenceGeometry } from "../compute/planform/reference-geometry";
import type { StaticResult } from "../compute/powertrain/solve-static";
import type { PitchStability } from "../compute/stability/neutral-point";
import type { Settler } from "../model/design/settle";
import type { Shape } from "./shape";

/** What the figures rest on and checks look at besides. */
export interface Facts {
  mass?: MassFigures;
  shape?: Settler<Shape<Quantity>>;
  reference?: ReferenceGeometry;
  pitch?: PitchStability;
  side?: Side;
  /** All powerplants standing still at full throttle: nominal volts for thrust, full charge for limits. */
  power?: { readonly nominal: StaticResult; readonly full: StaticResult };
}
