import type { Powerplant, Propeller, Source } from "../../model/design/power";
import type { FlightModel, Loaded } from "../aircraft/flight-model";
import type { LevelTable } from "../aircraft/level-table";
import { standardGravity } from "../constants";
import { smoothCurve } from "../curve";
import { bracketedRoot } from "../root";
import { runAt } from "../powertrain/run-at";
import type { PlantRun } from "../powertrain/plant-run";
import type { PropellerMap } from "../propeller/propeller-map";
import { torqueSpread, type TorqueSpread } from "../propeller/swirl";
import { loadAt } from "./asymmetry";
import { lateralBalance, type LateralBalance, type LateralFrame } from "./balance";
import type { LateralAir, Washed } from "./lateral-air";
import { plantLoads, together, type Contribution, type Lateral, type Plant, type PlantLoad } from "./plant";
import { swirlLoad } from "./swirl";
import { washedStrips, type Wind } from "./washed-strips";

export interface AliveCase {
  readonly model: Pick<FlightModel, "air" | "basis">;
  readonly table: LevelTable;
  readonly lateral: LateralAir;
  readonly powerplants: readonly Powerplant[];
  readonly sources: readonly Source[];
  readonly mapOf: (propeller: Propeller) => PropellerMap;
  /** How the torque of each powerplant lies along its blades, by path: with `torqueSpreads` at one speed, since it hardly changes with it. */
  readonly spreads: ReadonlyMap<string, TorqueSpread>;
}

/** At full throttle at a speed, m/s. */
export function torqueSpreads({ powerplants, sources, model: { air }, mapOf }: Omit<AliveCase, "spreads">, speed: number): Map<string, TorqueSpread> {
  const runs = runAt({ powerplants, sources, air, state: "nominal", speed, mapOf }).powerplants;
  return new Map(powerplants.flatMap((plant, i): [string, TorqueSpread][] => {
    const run = runs[i];
    if (!("thrust" in run) || !plant.propeller || !(run.rotation > 0)) return [];
    const spread = torqueSpread(plant.propeller, { rotation: run.rotation, speed: along(plant, speed), air });
    return spread ? [[plant.path, spread]] : [];
  }));
}

/** A steady path: m/s, and lift over weight, the cosine of its angle. */
export interface Pulled {
  readonly speed: number;
  readonly loadFactor: number;
}

/** Straight flight under power. Bank and sideslip are absent where the weight's part across the flight is too small to hold the side force. */
export interface Alive extends Pick<LateralBalance, "aileron" | "rudder"> {
  readonly bank?: number;
  readonly sideslip?: number;
  readonly speed: number;
  readonly contributions: readonly Contribution[];
}

/**
 * Straight flight with all powerplants at full throttle on half-charged packs. With both controls without sideslip: they leave no roll
 * and no yaw, and the bank holds the side force. On a steep path wings carry less, and so does the bank. With one of them only, sideslip
 * and bank are what they must be. Undefined where a powerplant is unknown or nothing balances it.
 */
export function heldAlive({ model: { air, basis }, table, lateral, powerplants, sources, mapOf, spreads }: AliveCase, { mass, x, z }: Loaded, { speed, loadFactor }: Pulled): Alive | undefined {
  const lifts = table.flights.map(({ state }) => state.liftCoefficient).reverse();
  const lift = Math.min(lifts[lifts.length - 1], (2 * loadFactor * mass * standardGravity) / (air.density * speed ** 2 * basis.reference.area));
  const angle = smoothCurve(lifts, table.flights.map(({ state }) => state.angle).reverse())(lift);
  const wind = { speed, angle, density: air.density };
  const runs = runAt({ powerplants, sources, air, state: "nominal", speed, mapOf }).powerplants;
  const washed: Washed[] = [];
  const plants: Plant[] = [];
  for (const [i, plant] of powerplants.entries()) {
    const run = runs[i];
    if (!("thrust" in run) || !plant.propeller) return undefined;
    const own = washedStrips(lateral.strips, plant, run, wind);
    washed.push(...own);
    const load = loadOf(plant, plant.propeller, run, wind, { air, mapOf });
    const slipstream = swirlLoad(lateral, plant, { thrust: run.thrust, torque: run.torque, spread: spreads.get(plant.path) }, wind, own, lift * basis.reference.area);
    plants.push({
      path: plant.path, hub: plant.hub, thrustAxis: plant.thrustAxis, clockwise: plant.propeller.clockwise, running: () => ({ ...load, slipstream }), deadDrag: () => undefined,
    });
  }
  const contributions = plantLoads(plants, [], [x, 0, z], speed, angle);
  const held = contributions && straight({ mass: loadFactor * mass, density: air.density, ...lateral.frame(lift, washed) }, together(contributions), speed);
  return held && { ...held, speed, contributions };
}

type Run = Pick<PlantRun, "thrust" | "torque" | "rotation">;

const along = ({ thrustAxis }: Powerplant, speed: number): number => Math.max(0, -thrustAxis[0] * speed);

function loadOf(plant: Powerplant, propeller: Propeller, { thrust, torque, rotation }: Run, { speed, angle }: Wind, { air, mapOf }: Pick<AliveCase, "mapOf"> & Pick<FlightModel, "air">): PlantLoad {
  const { force, moment } = rotation > 0 ? mapOf(propeller).cross({ rotation, speed: along(plant, speed), air }) : { force: 0, moment: 0 };
  return loadAt({ thrust: () => thrust, torque: () => torque, force: () => force, moment: () => moment }, plant, speed, angle);
}

function straight(frame: LateralFrame, load: Lateral, speed: number): Pick<Alive, "aileron" | "rudder" | "bank" | "sideslip"> | undefined {
  const { aileron, rudder, area, span, density, mass } = frame;
  if (!aileron || !rudder) return lateralBalance(frame, load, speed);
  const force = (density * speed ** 2 * area) / 2;
  const [roll, yaw] = [-load.roll / (force * span), -load.yaw / (force * span)];
  const whole = aileron.roll * rudder.yaw - rudder.roll * aileron.yaw;
  const turned = { aileron: (roll * rudder.yaw - yaw * rudder.roll) / whole, rudder: (aileron.roll * yaw - aileron.yaw * roll) / whole };
  if (!Number.isFinite(turned.aileron) || !Number.isFinite(turned.rudder)) return undefined;
  const sine = -(load.side + force * (aileron.side * turned.aileron + rudder.side * turned.rudder)) / (mass * standardGravity);
  return { ...turned, ...(Math.abs(sine) <= 1 && { sideslip: 0, bank: Math.asin(sine) }) };
}

/** How far side thrust is looked for, rad: beyond, the shaft points past what it is there for. */
const farthest = (10 * Math.PI) / 180;

/** How far about that of a weight close by it is looked for first, rad. */
const vicinity = 1e-3;

/** A powerplant whose shaft is turned to point so far to the right of straight ahead, as far down as before. */
export function pointed(plant: Powerplant, right: number): Powerplant {
  const level = Math.sqrt(Math.max(0, 1 - plant.thrustAxis[2] ** 2));
  return { ...plant, thrustAxis: [-level * Math.cos(right), level * Math.sin(right), plant.thrustAxis[2]] };
}

/**
 * How far to the right of straight ahead a single powerplant must point to need no rudder, rad. Undefined with several, without a rudder, or
 * where none within 10° does it. The slipstream goes with the shaft. `near`: that of nearly the same weight, to look about first.
 */
export function neutralSideThrust(given: AliveCase, loaded: Loaded, path: Pulled, near?: number): number | undefined {
  const [plant, ...others] = given.powerplants;
  if (!plant || others.length > 0) return undefined;
  const rudder = (right: number) => heldAlive({ ...given, powerplants: [pointed(plant, right)] }, loaded, path)?.rudder ?? NaN;
  const close = near === undefined ? undefined : bracketedRoot(rudder, near - vicinity, near + vicinity, 1e-9);
  return close ?? bracketedRoot(rudder, -farthest, farthest, 1e-9);
}
