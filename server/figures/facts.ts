import type { Quantity } from "../../grammar/units/quantity";
import type { FlightModel, Loaded } from "../compute/aircraft/flight-model";
import type { FlightPoints } from "../compute/aircraft/flight-points";
import type { LevelTable } from "../compute/aircraft/level-table";
import type { Performance } from "../compute/aircraft/performance";
import type { Side } from "../compute/derivatives/side";
import type { MassFigures } from "../compute/mass/figures";
import type { Critical, MotorOut } from "../compute/motor-out/motor-out";
import type { ReferenceGeometry } from "../compute/planform/reference-geometry";
import type { FlightPower } from "../compute/powertrain/in-flight";
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
  /** Level flight of the loading: its air, and the points that figures tell of. */
  flight?: {
    readonly model: FlightModel; readonly loaded: Loaded; readonly points: FlightPoints; readonly table: LevelTable;
    readonly performance?: Performance; readonly power?: FlightPower;
  };
  /** Each powerplant dead in turn, where there are more than one and something yaws. */
  motorOut?: { readonly each: readonly MotorOut[]; readonly critical?: Critical };
  /** All powerplants standing still at full throttle: nominal volts for thrust, full charge for limits. */
  power?: { readonly nominal: StaticResult; readonly full: StaticResult };
}
