import type { Aeroplane } from "../../compute/flight/aeroplane";
import { heavierDrag } from "../../compute/aircraft/level-table";
import { asymmetryOf, failedRunsSteps } from "../../compute/motor-out/asymmetry";
import type { LateralAir } from "../../compute/motor-out/lateral-air";
import { lookedAt, type Asymmetry } from "../../compute/motor-out/minimum-control-speed";
import { controlledSpeeds, criticalMotor, motorOut, type MotorOut } from "../../compute/motor-out/motor-out";
import { plantLoads, together } from "../../compute/motor-out/plant";
import { settle } from "../../model/design/settle";
import { across } from "../changes";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { placeless, rungAbove, rungBelow } from "../power-tables";
import { mapsIn } from "../propeller-maps";
import type { Row } from "../series";
import { putFailure } from "./failures";
import { steeredAir } from "./steered";

/** Slowest speed at which powerplants are known, over the stall: a little under where the search ends, for the lighter of a band. */
const slowest = 0.45;

interface Worked {
  readonly asymmetry: Asymmetry;
  readonly stallSpeed: number;
  readonly each: readonly MotorOut[];
  /** Speeds at which all of it is known. */
  readonly looked: readonly number[];
}

/** Each powerplant dead in turn, in steps. Nothing with fewer than two, without flight on them, or where nothing yaws. */
export function* putMotorOut(set: FigureSet, memory: Memory): Generator<void, void> {
  const { flight } = set.facts;
  const { powerplants, sources } = settle({ powerplants: set.design.powerplants, sources: set.design.sources });
  const mass = set.value("mass.total");
  if (powerplants.length < 2 || !flight?.power || !mass) return;
  const { model, loaded, points: { stall }, table, performance } = flight;
  yield;
  const lateral = steeredAir(set, memory);
  if (!lateral?.yaw) return;
  yield;
  // Beyond the top speed propellers brake: no failure is held there.
  const high = Math.min(table.range[1], Math.max(performance?.topSpeed ?? Infinity, 1.3 * stall.speed));
  const given = { powerplants: placeless(powerplants), sources, air: model.air, speeds: [rungBelow(slowest * stall.speed), rungAbove(high)] as const };
  const runs = yield* memory.recallSteps("motors with one dead", given, () => failedRunsSteps({ ...given, mapOf: mapsIn(memory) }));
  const asymmetryAt = asymmetryOf({ model, table, lateral, powerplants, runs });
  const prepared = (kg: number) => {
    const heavier = kg / loaded.mass;
    const stallSpeed = stall.speed * Math.sqrt(heavier);
    const asymmetry = asymmetryAt({ ...loaded, mass: kg });
    const aeroplane: Aeroplane = {
      mass: kg, density: model.air.density, stallSpeed, searched: [stallSpeed, high], drag: heavierDrag(table, heavier),
    };
    const pressure = (speed: number) => (model.air.density * speed ** 2) / 2;
    const failure = (path: string, near?: MotorOut) =>
      motorOut(asymmetry, aeroplane, path, (held) => pressure(held.speed) * lateral.dragArea(held), near && { ...near, stallSpeed: stall.speed });
    return { asymmetry, stallSpeed, failure, looked: lookedAt(...controlledSpeeds(aeroplane)) };
  };
  const { failure, ...nominalCase } = prepared(loaded.mass);
  const each: MotorOut[] = [];
  for (const { path } of powerplants) {
    yield;
    each.push(failure(path));
  }
  const nominal: Worked = { ...nominalCase, each };
  const work = (kg: number): Worked => {
    const at = prepared(kg);
    return { ...at, each: nominal.each.map((one) => at.failure(one.path, one)) };
  };
  yield;
  const critical = criticalMotor(nominal.asymmetry, nominal.stallSpeed);
  set.facts.motorOut = { each: nominal.each, ...(critical && { critical }) };
  const of = yield* across({ middle: work, changes: [] }, { mass: { quantity: mass, step: 1e-3 * mass.value } }, (at, { mass: kg }) =>
    numbersOf(kg === loaded.mass ? nominal : at(kg), lateral));
  if (!of) return;
  for (const one of nominal.each) putFailure(set, one, critical, lateral, (name, dimension) => of(`${name} ${one.path}`, dimension));
  putYaw(set, nominal, lateral);
}

function numbersOf({ each }: Worked, lateral: LateralAir): Readonly<Record<string, number | undefined>> {
  return Object.fromEntries(each.flatMap(({ path, control, atLiftOff, climb }) => [
    [`speed ${path}`, control?.speed], [`rudder ${path}`, rudderAngle(lateral, atLiftOff?.rudder)], [`climb ${path}`, climb?.rate],
  ]));
}

const rudderAngle = ({ yaw }: LateralAir, effect: number | undefined): number | undefined =>
  yaw && effect !== undefined ? yaw.angle(effect) : undefined;

/** The yaw that each failure leaves, and what full rudder gives by itself. */
function putYaw(set: FigureSet, { asymmetry, each, looked: speeds }: Worked, { yaw }: LateralAir): void {
  const row = (title: string, of: (speed: number) => number | undefined): Row => ({ title, dimension: "torque", values: speeds.map(of) });
  const most = yaw ? Math.min(yaw.throw.negative, yaw.throw.positive) : 0;
  set.putSeries({
    name: "motor_out.yaw", title: "Yaw with a motor dead, and by full rudder, over speed", x: { title: "Speed", dimension: "speed", values: speeds },
    lines: [
      ...each.map(({ path }) => row(`${path} dead`, (speed) => {
        const loads = plantLoads(asymmetry.plants, [path], asymmetry.balance, speed, asymmetry.angle?.(speed));
        return loads && Math.abs(together(loads).yaw);
      })),
      ...each.map(({ path }) => row(`Full rudder, ${path} dead`, (speed) => {
        const frame = asymmetry.frame(speed, [path]);
        return frame?.rudder && ((frame.density * speed ** 2) / 2) * frame.area * frame.span * Math.abs(frame.rudder.yaw) * most;
      })),
    ],
  });
}
