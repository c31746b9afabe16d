import type { Aeroplane } from "../flight/aeroplane";
import { ceiling, type Ceiling } from "../flight/ceiling";
import { handLaunch, type HandLaunch } from "../flight/hand-launch";
import { topSpeed } from "../flight/level";
import { farthestFlight, levelOnCharge, longestFlight, type Fed, type OnCharge } from "../flight/on-charge";
import { climbAt, fastestClimb, flattestGlide, glideAt, leastSink, steepestClimb, type BestPath } from "../flight/path";
import { plannedTurn, type Turn } from "../flight/turn";
import type { PowerTable } from "../powertrain/power-table";
import type { ThinAir } from "../powertrain/thin-air";
import type { FlightModel, Loaded } from "./flight-model";
import type { FlightPoints } from "./flight-points";
import { groundRuns, type GroundRuns } from "./ground-runs";
import type { LevelTable } from "./level-table";

export interface PerformanceCase {
  readonly model: FlightModel;
  readonly loaded: Loaded;
  readonly points: FlightPoints;
  readonly table: LevelTable;
  /** Of the powerplants in the field's air, from rest to past the table's speeds; absent without any that can be computed. */
  readonly power?: PowerTable;
  /** Thrust at full throttle in thinner air. */
  readonly thinAir?: ThinAir;
  /** Drag of the propellers with all motors off, N; absent without any that can be computed. */
  readonly idleDrag?: (speed: number) => number;
  /** Where the energy comes from. */
  readonly fed: readonly Fed[];
}

/** What an aircraft does on its motors; parts are absent where what they rest on is. */
export interface Performance extends GroundRuns {
  readonly topSpeed?: number;
  readonly climb?: BestPath;
  readonly steepest?: BestPath;
  readonly longest?: OnCharge;
  readonly farthest?: OnCharge;
  readonly turn?: Turn;
  /** With all motors off: the farthest glide, and the one that sinks least. */
  readonly glide?: BestPath;
  readonly sink?: BestPath;
  /** At `throwSpeed` and full throttle, of what does not stand on wheels. */
  readonly thrown?: HandLaunch;
  readonly ceiling?: Ceiling;
  /** Thrust over drag at 1.3 × stall. */
  readonly thrustMargin?: number;
  /** At full throttle, N, over the speeds of the table. */
  readonly thrust: readonly (number | undefined)[];
  /** From the packs in level flight, W, over the same. */
  readonly electric: readonly (number | undefined)[];
}

/** Of a level throw by hand, m/s. Common practice, no source. */
export const throwSpeed = 8;

/** Share of the usable charge kept for the landing. Common practice, no source. */
export const reserve = 0.1;

/** Climb at the service ceiling of full-size practice, 100 ft/min, m/s. */
const serviceClimb = 0.508;

/** `near`: that of the same aircraft with nearly the same weight. Best values don't hang on the speed to first order: what is best flies at its speeds, grown with the stall's. */
export function performanceOf(given: PerformanceCase, near?: Near): Performance {
  const { points: { stall }, table, power } = given;
  const speeds = table.flights.map(({ speed }) => speed);
  const thrust = power ? speeds.map((speed) => power.thrust(speed)) : [];
  const electric = power ? speeds.map((speed) => power.electricPower(table.drag(speed)!, speed)) : [];
  const aeroplane = aeroplaneOf(given);
  const slow = 1.3 * stall.speed;
  const margin = power && (power.thrust(slow) ?? NaN) / (table.drag(slow) ?? NaN);
  return {
    thrust, electric, turn: plannedTurn(aeroplane), ...groundRuns(given.model, given.points, aeroplane),
    ...(given.idleDrag && glidesOf(aeroplane, near)),
    ...(power && {
      ...(near ? bestNear(given, aeroplane, near) : bestOf(given, aeroplane)), thrustMargin: margin,
      ...(!given.model.stance && { thrown: handLaunch(aeroplane, throwSpeed) }),
    }),
  };
}

type Glides = Pick<Performance, "glide" | "sink">;

function glidesOf(aeroplane: Aeroplane, near?: Near): Glides {
  if (!near) return { glide: flattestGlide(aeroplane), sink: leastSink(aeroplane) };
  const at = (path: BestPath | undefined) => path && glideAt(aeroplane, (path.speed * aeroplane.stallSpeed) / near.stallSpeed);
  return { glide: at(near.glide), sink: at(near.sink) };
}

type Best = Pick<Performance, "topSpeed" | "climb" | "steepest" | "longest" | "farthest" | "ceiling">;

const bestOf = (given: PerformanceCase, aeroplane: Aeroplane): Best => ({
  topSpeed: topSpeed(aeroplane), climb: fastestClimb(aeroplane), steepest: steepestClimb(aeroplane),
  longest: longestFlight(aeroplane, given.fed, { reserve }), farthest: farthestFlight(aeroplane, given.fed, { reserve }), ceiling: ceilingOf(given),
});

/** A neighbour's best speeds, and the stall they belong to. */
export interface Near extends Best, Glides {
  readonly stallSpeed: number;
}

function bestNear(given: PerformanceCase, aeroplane: Aeroplane, near: Near): Best {
  const grown = aeroplane.stallSpeed / near.stallSpeed;
  const level = (flown: OnCharge | undefined) => flown && levelOnCharge(aeroplane, flown.speed * grown, given.fed, { reserve });
  const climb = (path: BestPath | undefined) => path && climbAt(aeroplane, path.speed * grown);
  return {
    topSpeed: near.topSpeed === undefined ? undefined : topSpeed(aeroplane, near.topSpeed),
    climb: climb(near.climb), steepest: near.steepest?.vertical ? steepestClimb(aeroplane) : climb(near.steepest), longest: level(near.longest), farthest: level(near.farthest), ceiling: ceilingOf(given, near.ceiling),
  };
}

function aeroplaneOf({ model, loaded, points, table, power, idleDrag }: PerformanceCase): Aeroplane {
  return {
    mass: loaded.mass, density: model.air.density, stallSpeed: points.stall.speed, searched: [points.stall.speed, table.range[1]],
    drag: table.drag, ...(power && { thrust: power.thrust, electricPower: power.electricPower }), idleDrag,
  };
}

/** Drag at one lift hangs on the air's density by its pressure alone here: Reynolds numbers are those of the field. */
function ceilingOf({ model, loaded, points, table, thinAir }: PerformanceCase, near?: Ceiling): Ceiling | undefined {
  if (!thinAir) return undefined;
  const field = model.air.density;
  const at = (density: number): Aeroplane => {
    const faster = Math.sqrt(field / density);
    const [low, high] = [points.stall.speed * faster, table.range[1] * faster];
    return {
      mass: loaded.mass, density, stallSpeed: low, searched: [low, high],
      drag: (speed, loadFactor) => table.drag(speed / faster, loadFactor), thrust: thinAir(density),
    };
  };
  return ceiling(at, field, serviceClimb, near);
}
