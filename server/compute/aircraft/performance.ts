import type { Aeroplane } from "../flight/aeroplane";
import { ceiling, type Ceiling } from "../flight/ceiling";
import { groundAir, landingRun, overStall, rollingFriction, takeoffRun } from "../flight/ground-run";
import { topSpeed } from "../flight/level";
import { farthestFlight, longestFlight, type Fed, type OnCharge } from "../flight/on-charge";
import { fastestClimb, steepestClimb, type BestPath } from "../flight/path";
import { plannedTurn, type Turn } from "../flight/turn";
import { smoothCurve } from "../curve";
import type { PowerTable } from "../powertrain/power-table";
import { stateOf } from "./air-state";
import type { FlightModel, Loaded } from "./flight-model";
import type { FlightPoints } from "./flight-points";
import type { LevelTable } from "./level-table";

export interface PerformanceCase {
  readonly model: FlightModel;
  readonly loaded: Loaded;
  readonly points: FlightPoints;
  readonly table: LevelTable;
  /** Of the powerplants in the field's air, from rest to past the table's speeds; absent without any that can be computed. */
  readonly power?: PowerTable;
  /** Thrust at full throttle in air of another density, N. */
  readonly thrustIn?: (density: number) => ((speed: number) => number) | undefined;
  /** Where the energy comes from. */
  readonly fed: readonly Fed[];
}

/** What an aircraft does on its motors; parts are absent where what they rest on is. */
export interface Performance {
  readonly topSpeed?: number;
  readonly climb?: BestPath;
  readonly steepest?: BestPath;
  readonly longest?: OnCharge;
  readonly farthest?: OnCharge;
  readonly turn?: Turn;
  /** m */
  readonly takeoff?: number;
  readonly landing?: number;
  readonly ceiling?: Ceiling;
  /** Thrust over drag at 1.3 × stall. */
  readonly thrustMargin?: number;
  /** At full throttle, N, over the speeds of the table. */
  readonly thrust: readonly (number | undefined)[];
  /** From the packs in level flight, W, over the same. */
  readonly electric: readonly (number | undefined)[];
}

/** Rolling friction on the grass of a flying field with small wheels: twice that of full-size practice on turf. Common practice, no source. */
export const grassFriction = 2 * rollingFriction.turf.free;

/** Share of the usable charge kept for the landing. Common practice, no source. */
export const reserve = 0.1;

/** Climb at the service ceiling of full-size practice, 100 ft/min, m/s. */
const serviceClimb = 0.508;

/** Speeds at which thrust is worked out for a ceiling. */
const ceilingPlaces = 10;

export function performanceOf(given: PerformanceCase): Performance {
  const { points: { stall }, table, power } = given;
  const speeds = table.flights.map(({ speed }) => speed);
  const thrust = power ? speeds.map((speed) => power.thrust(speed)) : [];
  const electric = power ? speeds.map((speed) => power.electricPower(table.drag(speed)!, speed)) : [];
  const aeroplane = aeroplaneOf(given);
  const slow = 1.3 * stall.speed;
  const margin = power && (power.thrust(slow) ?? NaN) / (table.drag(slow) ?? NaN);
  return {
    thrust, electric, turn: plannedTurn(aeroplane), ...onTheGround(given, aeroplane),
    ...(power && {
      topSpeed: topSpeed(aeroplane), climb: fastestClimb(aeroplane), steepest: steepestClimb(aeroplane),
      longest: longestFlight(aeroplane, given.fed, { reserve }), farthest: farthestFlight(aeroplane, given.fed, { reserve }),
      ceiling: ceilingOf(given), thrustMargin: margin,
    }),
  };
}

type Curve = (speed: number) => number | undefined;

/** Smooth between neighbours that are known, undefined elsewhere. */
function curveOver(speeds: readonly number[], values: readonly (number | undefined)[]): Curve | undefined {
  const known = speeds.flatMap((speed, i) => (values[i] === undefined ? [] : [{ speed, value: values[i] }]));
  if (known.length < 3) return undefined;
  const curve = smoothCurve(known.map(({ speed }) => speed), known.map(({ value }) => value));
  const [low, high] = [known[0].speed * (1 - 1e-9), known[known.length - 1].speed * (1 + 1e-9)];
  return (speed) => (speed >= low && speed <= high ? curve(speed) : undefined);
}

function aeroplaneOf({ model, loaded, points, table, power }: PerformanceCase): Aeroplane {
  return {
    mass: loaded.mass, density: model.air.density, stallSpeed: points.stall.speed, searched: [points.stall.speed, table.range[1]],
    drag: table.drag, ...(power && { thrust: power.thrust, electricPower: power.electricPower }),
  };
}

/** Only on wheels: a hand launch has no run. */
function onTheGround({ model, loaded, points, power }: PerformanceCase, { stallSpeed }: Aeroplane): { takeoff?: number; landing?: number } {
  const { stance, basis, air } = model;
  if (!stance) return {};
  const { area } = basis.reference;
  const rolling = stateOf(basis, { angle: stance.angle });
  const wings = basis.strips.filter(({ kind }) => kind === "wing");
  const height = wings.reduce((sum, { z }) => sum + z, 0) / Math.max(1, wings.length) - stance.z;
  const span = 2 * Math.max(...wings.flatMap(({ ends }) => ends.map(([y]) => Math.abs(y))));
  const ground = groundAir({
    density: air.density, area, lift: rolling.liftCoefficient, parasite: points.cruise.parasite, induced: rolling.inducedDrag / area, height: height / span,
  });
  const roll = { ...ground, mass: loaded.mass, friction: grassFriction };
  const off = power && takeoffRun({ ...roll, thrust: power.thrust }, overStall.liftOff * stallSpeed);
  const down = landingRun(roll, overStall.touchdown * stallSpeed);
  return { ...(off && "distance" in off && { takeoff: off.distance }), ...(down && "distance" in down && { landing: down.distance }) };
}

/** Drag at one lift hangs on the air's density by its pressure alone here: Reynolds numbers are those of the field. */
function ceilingOf({ model, loaded, points, table, thrustIn }: PerformanceCase): Ceiling | undefined {
  if (!thrustIn) return undefined;
  const field = model.air.density;
  const at = (density: number): Aeroplane | undefined => {
    const faster = Math.sqrt(field / density);
    const pull = thrustIn(density);
    if (!pull) return undefined;
    const [low, high] = [points.stall.speed * faster, table.range[1] * faster];
    const speeds = Array.from({ length: ceilingPlaces }, (_, i) => low * (high / low) ** (i / (ceilingPlaces - 1)));
    const thrust = curveOver(speeds, speeds.map(pull));
    if (!thrust) return undefined;
    return { mass: loaded.mass, density, stallSpeed: low, searched: [low, high], drag: (speed, loadFactor) => table.drag(speed / faster, loadFactor), thrust };
  };
  return ceiling(at, field, serviceClimb);
}
