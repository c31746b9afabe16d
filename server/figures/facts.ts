import type { Quantity } from "../../grammar/units/quantity";
import type { FlightModel, Loaded } from "../compute/aircraft/flight-model";
import type { FlightPoints } from "../compute/aircraft/flight-points";
import type { LevelTable } from "../compute/aircraft/level-table";
import type { Performance } from "../compute/aircraft/performance";
import type { Side } from "../compute/derivatives/side";
import type { MassFigures } from "../compute/mass/figures";
import type { Aeroplane } from "../compute/flight/aeroplane";
import type { Fed } from "../compute/flight/on-charge";
import type { Sortie } from "../compute/flight/sortie";
import type { Alive } from "../compute/motor-out/all-alive";
import type { Critical, MotorOut } from "../compute/motor-out/motor-out";
import type { ReferenceGeometry } from "../compute/planform/reference-geometry";
import type { FlightPower } from "../compute/powertrain/in-flight";
import type { PowerTable } from "../compute/powertrain/power-table";
import type { StaticResult } from "../compute/powertrain/solve-static";
import type { PitchStability } from "../compute/stability/neutral-point";
import type { Design } from "../model/design/design";
import type { Settler } from "../model/design/settle";
import type { PlannedSortie } from "../model/design/sortie";
import type { BenchFact } from "./bench";
import type { Envelope } from "./flight/envelope";
import type { Shape } from "./shape";

/** A source by its path, with its share of all the power. */
export interface FedFrom extends Fed {
  readonly path: string;
}

/** A sortie as planned and as flown, down to empty packs if it comes to that. */
export interface SortieFlown {
  readonly plan: PlannedSortie;
  readonly flown: Sortie;
  /** Another plan flown, or this, on the usable charge of the packs that feed the motors, or of others in their place. */
  readonly fly: (plan: PlannedSortie, fed?: readonly Fed[]) => Sortie;
  /** The aircraft that flies it. */
  readonly aeroplane: Aeroplane;
}

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
    readonly performance?: Performance;
    /** Of its motors: the powerplants, their table over speed, and what feeds them. */
    readonly power?: FlightPower; readonly flown?: PowerTable; readonly fed?: readonly FedFrom[];
    /** Of all motors level at cruise, packs half charged. */
    readonly throttle?: number;
  };
  /** Sorties of the loading that could be worked out, flown or not. */
  sorties?: readonly SortieFlown[];
  /** Each powerplant dead in turn, where there are more than one and something yaws. */
  motorOut?: { readonly each: readonly MotorOut[]; readonly critical?: Critical };
  /** The design with its powerplants as their runs on the stand show them to be; absent where nothing is moved. */
  calibrated?: Design<Quantity>;
  /** Each powerplant that was run on the stand. */
  bench?: readonly BenchFact[];
  /** All powerplants at full throttle in the climb, where something steers: the share of the rudder's throw that takes, also with a single one pointing elsewhere. */
  climbTrim?: {
    readonly held: Alive; readonly share?: number; readonly neutral?: number; readonly shareAt: (right: number) => number | undefined;
  };
  /** All powerplants over the speeds flown. */
  envelope?: Envelope;
  /** All powerplants standing still at full throttle: nominal volts for thrust, full charge for limits. */
  power?: { readonly nominal: StaticResult; readonly full: StaticResult };
}
