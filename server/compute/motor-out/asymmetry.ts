import type { Powerplant, Propeller, Source } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { standardGravity } from "../constants";
import type { FlightModel, Loaded } from "../aircraft/flight-model";
import type { LevelTable } from "../aircraft/level-table";
import { along, dot } from "../convex/shapes";
import { smoothCurve } from "../curve";
import { deadPropellers } from "../drag/dead-propellers";
import { runAt } from "../powertrain/run-at";
import type { PropellerMap } from "../propeller/propeller-map";
import { torqueSpread, type TorqueSpread } from "../propeller/swirl";
import type { LateralFrame } from "./balance";
import type { LateralAir } from "./lateral-air";
import type { Asymmetry } from "./minimum-control-speed";
import type { Lateral, Plant, PlantLoad } from "./plant";
import { swirlLoad } from "./swirl";
import { washedStrips, windAcross } from "./washed-strips";

export interface RunsCase {
  readonly powerplants: readonly Powerplant[];
  readonly sources: readonly Source[];
  readonly air: Air;
  readonly mapOf: (propeller: Propeller) => PropellerMap;
  /** Slowest and fastest speed asked for, m/s. */
  readonly speeds: readonly [low: number, high: number];
}

export interface AsymmetryCase {
  readonly model: Pick<FlightModel, "air" | "basis">;
  readonly table: LevelTable;
  readonly lateral: LateralAir;
  readonly powerplants: readonly Powerplant[];
  readonly runs: FailedRuns;
}

/** Speeds at which powerplants are worked out; smooth between them. */
const places = 20;

type Curve = (speed: number) => number;

/** What a powerplant gives over speed that does not hang on the weight: thrust, torque, and what air across its shaft adds for each m/s. */
export interface RunCurves {
  readonly thrust: Curve;
  readonly torque: Curve;
  readonly force: Curve;
  readonly moment: Curve;
  /** How the torque lies along its blades, which hardly changes with speed: at a middle one. */
  readonly spread?: TorqueSpread;
}

/** Powerplants over speed, one of them dead: neither the shape nor the weight they carry changes this. */
export interface FailedRuns {
  readonly speeds: RunsCase["speeds"];
  /** By the dead one and the live one; nothing of those that don't run. */
  readonly running: ReadonlyMap<string, ReadonlyMap<string, RunCurves>>;
  /** Of each when dead, N. */
  readonly drags: ReadonlyMap<string, Curve>;
}

/** Each dead in turn. Live powerplants run at full throttle on half-charged packs; those on one source with a dead one have its volts to themselves. */
export function* failedRunsSteps(given: RunsCase): Generator<void, FailedRuns> {
  const { powerplants, air, speeds: [low, high] } = given;
  const speeds = Array.from({ length: places }, (_, i) => low * (high / low) ** (i / (places - 1)));
  const running = new Map<string, ReadonlyMap<string, RunCurves>>();
  const drags = new Map<string, Curve>();
  for (const dead of powerplants) {
    yield;
    running.set(dead.path, runCurves(powerplants.filter((one) => one !== dead), given, speeds));
    yield;
    const [{ area }] = deadPropellers({ ...given, powerplants: [dead] });
    drags.set(dead.path, (speed) => (area(speed) * air.density * speed ** 2) / 2);
  }
  return { speeds: given.speeds, running, drags };
}

/**
 * The asymmetry of any weight, with just one powerplant dead. The angle to the flight is that of level flight; below the stall, that at
 * the stall, as is the lift.
 */
export function asymmetryOf({ model: { air, basis }, table, lateral, powerplants, runs: { running, drags, speeds: [low, high] } }: AsymmetryCase): (loaded: Loaded) => Asymmetry {
  const lifts = table.flights.map(({ state }) => state.liftCoefficient).reverse();
  const angleAt = smoothCurve(lifts, table.flights.map(({ state }) => state.angle).reverse());
  const most = lifts[lifts.length - 1];
  const inside = (speed: number) => speed >= low * (1 - 1e-9) && speed <= high * (1 + 1e-9);
  return ({ mass, x, z }) => {
    const liftAt = (speed: number) => Math.min(most, (2 * mass * standardGravity) / (air.density * speed ** 2 * basis.reference.area));
    const angle = (speed: number) => angleAt(liftAt(speed));
    const blown = remembered((speed, dead): Blown => {
      const slipstreams = new Map<string, Lateral>();
      const wind = { speed, angle: angle(speed), density: air.density };
      const washed = powerplants.flatMap((plant) => {
        const own = running.get(dead)?.get(plant.path);
        if (!own) return [];
        const load = { thrust: own.thrust(speed), torque: own.torque(speed), spread: own.spread };
        const strips = washedStrips(lateral.strips, plant, load, wind);
        slipstreams.set(plant.path, swirlLoad(lateral, plant, load, wind, strips, liftAt(speed) * basis.reference.area));
        return strips;
      });
      return { slipstreams, frame: { mass, density: air.density, ...lateral.frame(liftAt(speed), washed) } };
    });
    const plants = powerplants.map((plant): Plant => ({
      path: plant.path, hub: plant.hub, thrustAxis: plant.thrustAxis, clockwise: plant.propeller?.clockwise ?? true,
      running: (speed, [dead]) => {
        const curves = running.get(dead)?.get(plant.path);
        return curves && inside(speed) ? { ...loadAt(curves, plant, speed, angle(speed)), slipstream: blown(speed, dead).slipstreams.get(plant.path) } : undefined;
      },
      deadDrag: (speed) => (inside(speed) ? drags.get(plant.path)?.(speed) : undefined),
    }));
    return { plants, balance: [x, 0, z], angle, frame: (speed, [dead]) => blown(speed, dead).frame };
  };
}

/** At a speed with one dead: what the slipstreams of the rest do by their swirl, and the aircraft in them. */
interface Blown {
  readonly slipstreams: ReadonlyMap<string, Lateral>;
  readonly frame: LateralFrame;
}

/** Searches ask for the same speeds in several ways of balancing. */
function remembered(work: (speed: number, dead: string) => Blown): (speed: number, dead: string) => Blown {
  const known = new Map<string, Blown>();
  return (speed, dead) => {
    const key = `${speed} ${dead}`;
    const blown = known.get(key) ?? work(speed, dead);
    known.set(key, blown);
    return blown;
  };
}

function runCurves(live: readonly Powerplant[], { sources, air, mapOf }: RunsCase, speeds: readonly number[]): Map<string, RunCurves> {
  const runs = speeds.map((speed) => runAt({ powerplants: live, sources, air, state: "nominal", speed, mapOf }).powerplants);
  return new Map(live.flatMap((plant, i): [string, RunCurves][] => {
    const { propeller } = plant;
    const points = runs.map((run) => run[i]);
    if (!propeller || !points.every((point) => "thrust" in point)) return [];
    const map = mapOf(propeller);
    const slopes = points.map(({ rotation }, k) =>
      (rotation > 0 ? map.cross({ rotation, speed: Math.max(0, -plant.thrustAxis[0] * speeds[k]), air }) : { force: 0, moment: 0 }));
    const curve = (values: readonly number[]) => smoothCurve(speeds, values);
    const middle = Math.floor(speeds.length / 2);
    const { rotation } = points[middle];
    return [[plant.path, {
      thrust: curve(points.map(({ thrust }) => thrust)), torque: curve(points.map(({ torque }) => torque)),
      force: curve(slopes.map(({ force }) => force)), moment: curve(slopes.map(({ moment }) => moment)),
      spread: rotation > 0 ? torqueSpread(propeller, { rotation, speed: Math.max(0, -plant.thrustAxis[0] * speeds[middle]), air }) : undefined,
    }]];
  }));
}

/** With the part of the air that crosses the shaft from below. */
export function loadAt({ thrust, torque, force, moment }: RunCurves, { thrustAxis: axis }: Powerplant, speed: number, angle: number): PlantLoad {
  const across = windAcross(axis, speed, angle);
  // Up in the disc: what is left of z beside the shaft.
  const up = along([0, 0, 1], -axis[2], axis);
  const size = Math.sqrt(dot(up, up));
  const rising = size > 1e-9 ? dot(across, up) / size : 0;
  const pull = thrust(speed);
  return {
    thrust: pull, torque: torque(speed), normalForce: force(speed) * rising,
    bladeOffset: pull === 0 ? 0 : (moment(speed) * rising) / pull,
  };
}
