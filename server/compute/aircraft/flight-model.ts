import type { Air } from "../atmosphere/atmosphere";
import { standardGravity } from "../constants";
import type { Flow } from "../drag/flow";
import type { ParasiteDrag } from "../drag/parasite-drag";
import type { SectionsAir } from "../section-air/section-air";
import type { PitchStability } from "../stability/neutral-point";
import { airAt } from "./air-at";
import type { AirBasis } from "./air-basis";
import type { GroundStance } from "./ground-stance";
import { levelState, type LevelState } from "./level-state";

/** All that the air does to one shape, its controls and sections; it knows no weights. */
export interface FlightModel {
  readonly basis: AirBasis;
  readonly pitch: PitchStability;
  readonly sections: SectionsAir;
  readonly air: Air;
  readonly parasite: (flow: Flow) => ParasiteDrag;
  readonly stance?: GroundStance;
}

/** What flies in it: kg, and the balance point, m. */
export interface Loaded {
  readonly mass: number;
  readonly x: number;
  readonly z: number;
}

/** Level flight with all its drag, as coefficients on the reference area; the propeller's is left out. */
export interface LevelFlight {
  readonly speed: number;
  readonly state: LevelState;
  readonly induced: number;
  /** Sections, bodies, gear, struts, gaps. */
  readonly parasite: number;
  readonly drag: number;
  /** Of all but the sections, part by part. */
  readonly parts: ParasiteDrag;
}

export function levelFlight({ basis, sections, air, parasite }: FlightModel, { mass, x, z }: Loaded, speed: number, loadFactor = 1): LevelFlight | undefined {
  const state = levelState(basis, sections, { speed, air, mass, cgX: x, cgZ: z, loadFactor });
  if (!state) return undefined;
  const parts = parasite({ speed, air });
  const rest = state.profile + parts.area / basis.reference.area;
  return { speed, state, induced: state.induced, parasite: rest, drag: rest + state.induced, parts };
}

/** Speed at a lift coefficient in level flight, m/s. */
export const speedFor = ({ basis, air }: FlightModel, { mass }: Loaded, liftCoefficient: number): number =>
  Math.sqrt((2 * mass * standardGravity) / (air.density * basis.reference.area * liftCoefficient));

/** Lift coefficients at whose speeds sections are asked for first, so that all polars that flight needs are wanted at once. */
const first = [1.5, 1, 0.5, 0.2, 0.1, 0.05];

/** Are the sections known at the speeds of common flight? All that are not are asked for. */
export function sectionsKnown(model: FlightModel, loaded: Loaded): boolean {
  const known = first.map((lift) => airAt(model.basis, model.sections, { speed: speedFor(model, loaded, lift), air: model.air }) !== undefined);
  return known.every(Boolean);
}
