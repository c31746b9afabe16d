import type { Powerplant, Propeller, Source } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import type { ChargeState } from "../battery/cell";
import { emfOf, equivalentSource, packCurrents, type EquivalentSource, type Missing, type SourceMissing } from "../battery/source";
import { propellerMap } from "../propeller/propeller-map";
import { bracketedRoot } from "../root";
import { driveAt, stopped, type Drive } from "./drive";
import { driveOf, type Assumption, type DriveMissing, type MapOf } from "./drive-of";
import { plantRun, type PlantRun } from "./plant-run";

export interface RunCase {
  readonly powerplants: readonly Powerplant[];
  readonly sources: readonly Source[];
  readonly air: Air;
  /** `full` for limits, `nominal` for thrust. */
  readonly state: ChargeState;
  /** 0 to 1; 1 when absent. */
  readonly throttle?: number;
  /** Airspeed straight ahead, m/s; 0 when absent. */
  readonly speed?: number;
  /** Where propellers' maps come from: a caller that remembers them hands them in. */
  readonly mapOf?: MapOf;
}

export interface SourceRun {
  readonly path: string;
  /** At the terminals: A, V, W. */
  readonly current: number;
  readonly volts: number;
  readonly power: number;
  /** Lost inside the packs as one, W. */
  readonly heat: number;
  readonly source: EquivalentSource;
  readonly packs: readonly { readonly path: string; readonly current: number; readonly maxCurrent?: number }[];
  /** Powerplants fed from it that lack something: what they would draw is not in the sag. */
  readonly leftOut: readonly string[];
}

export type PlantResult = ({ readonly path: string } & (DriveMissing | Missing<"battery">)) | PlantRun;
export type SourceResult = ({ readonly path: string } & SourceMissing) | SourceRun;

export interface RunResult {
  /** In the order of the powerplants and sources given. */
  readonly powerplants: readonly PlantResult[];
  readonly sources: readonly SourceResult[];
}

interface Fed {
  readonly plant: Powerplant;
  readonly drive: Drive;
  readonly assumed: readonly Assumption[];
  readonly kind: string;
}

/**
 * All powerplants at one airspeed. Those on one source share its sag: its terminal voltage is the one at which what it
 * gives is what they draw, found by bracketing, since each draws more at more volts. A powerplant or source that lacks an
 * input says which, and the rest is computed without it. Each propeller meets the airspeed's part along its shaft, and one
 * that blows forward still air. Without throttle folding blades fold, others are turned by the air where it can, against the
 * motor's friction; what stands or is folded drags. What the air across the shaft does is `inclinedLoad`'s.
 */
export function runAt({ powerplants, sources, air, state, throttle = 1, speed = 0, mapOf }: RunCase): RunResult {
  const duty = Math.min(1, Math.max(0, throttle));
  const maps = mapOf ?? oneMapPerShape();
  const plants = new Map<Powerplant, PlantResult>();
  const results = sources.map((source): SourceResult => {
    const own = powerplants.filter((plant) => plant.source === source.path);
    const equivalent = equivalentSource(source);
    if ("missing" in equivalent) {
      for (const plant of own) plants.set(plant, { path: plant.path, missing: "battery" });
      return { path: source.path, ...equivalent };
    }
    const fed: Fed[] = [];
    for (const plant of own) {
      const drive = driveOf(plant, air, maps, speedAlong(plant, speed));
      if ("missing" in drive) plants.set(plant, { path: plant.path, ...drive });
      else fed.push({ plant, ...drive, kind: kindOf(plant, speedAlong(plant, speed)) });
    }
    const emf = emfOf(source.wired, equivalent.packs, state);
    const volts = terminalVolts(emf, equivalent.resistance, fed, duty);
    const points = fed.map(({ plant, drive }) => (folds(plant, duty, speed) ? stopped(drive, duty) : driveAt(drive, volts, duty)));
    const current = points.reduce((sum, point) => sum + point.current, 0);
    fed.forEach(({ plant, assumed }, i) => {
      const all: readonly Assumption[] = equivalent.assumedResistance ? [...assumed, "battery.resistance"] : assumed;
      const pressure = 0.5 * air.density * speedAlong(plant, speed) ** 2;
      plants.set(plant, plantRun(plant, points[i], { source: source.path, volts, pressure, assumed: all }));
    });
    const shares = packCurrents(source.wired, equivalent.packs, state, current);
    return {
      path: source.path, current, volts, power: volts * current, heat: current ** 2 * equivalent.resistance, source: equivalent,
      packs: equivalent.packs.map(({ path, maxCurrent }, i) => ({ path, current: shares[i], maxCurrent })),
      leftOut: own.filter((plant) => !fed.some((one) => one.plant === plant)).map((plant) => plant.path),
    };
  });
  return { powerplants: powerplants.map((plant) => plants.get(plant) ?? unfed(plant, air, maps, speed)), sources: results };
}

/** Without a battery; says what else it lacks first, as all others do. */
function unfed(plant: Powerplant, air: Air, maps: MapOf, speed: number): PlantResult {
  const drive = driveOf(plant, air, maps, speedAlong(plant, speed));
  return { path: plant.path, ...("missing" in drive ? drive : ({ missing: "battery" } as const)) };
}

/**
 * Drives that are alike have as many times the source's resistance in the leads of each: no search. Unlike ones draw less than
 * they would without sag, so the volts lie between those of that current and those at rest.
 */
function terminalVolts(emf: number, resistance: number, fed: readonly Fed[], duty: number): number {
  if (fed.length === 0) return emf;
  const [{ drive }] = fed;
  const drawn = (volts: number) => fed.reduce((sum, each) => sum + driveAt(each.drive, volts, duty).current, 0);
  if (fed.every((each) => each.kind === fed[0].kind)) {
    return emf - fed.length * resistance * driveAt({ ...drive, leadResistance: drive.leadResistance + fed.length * resistance }, emf, duty).current;
  }
  const least = Math.max(0, emf - resistance * drawn(emf));
  return bracketedRoot((volts) => emf - volts - resistance * drawn(volts), least, emf, emf * 1e-11) ?? emf;
}

/** The same for drives that are alike. */
const kindOf = ({ motor, controller, propeller }: Powerplant, along: number): string =>
  JSON.stringify([motor, controller && { ...controller, path: "" }, propeller && mapShape(propeller), along]);

/** Blades fold back once nothing drives them, with the flight's help. */
const folds = ({ propeller }: Powerplant, duty: number, speed: number): boolean => propeller?.folding === true && duty === 0 && speed > 0;

/** x runs aft. */
const speedAlong = ({ thrustAxis }: Powerplant, speed: number): number => Math.max(0, -thrustAxis[0] * speed);

/** What tells one propeller's map from another's: sense of rotation and the maker's limit do not. */
export const mapShape = (propeller: Propeller): Propeller => ({ ...propeller, clockwise: true, maxRotation: undefined });

function oneMapPerShape(): MapOf {
  const known = new Map<string, ReturnType<MapOf>>();
  return (propeller) => {
    const key = JSON.stringify(mapShape(propeller));
    const map = known.get(key) ?? propellerMap(propeller);
    known.set(key, map);
    return map;
  };
}
