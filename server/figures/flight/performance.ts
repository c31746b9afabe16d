import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import type { FlightModel, Loaded } from "../../compute/aircraft/flight-model";
import type { FlightPoints } from "../../compute/aircraft/flight-points";
import { heavierDrag, type LevelTable } from "../../compute/aircraft/level-table";
import { performanceOf, reserve, type Near, type Performance } from "../../compute/aircraft/performance";
import { standardGravity } from "../../compute/constants";
import { parasiteNotModelled } from "../../compute/drag/accounts";
import { storeOf } from "../../compute/battery/store";
import type { FlightPower } from "../../compute/powertrain/in-flight";
import { settle } from "../../model/design/settle";
import { across } from "../changes";
import type { FedFrom } from "../facts";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { powerIn } from "../power-tables";
import { mapsIn } from "../propeller-maps";
import type { Row } from "../series";
import { named } from "../wing";
import { groundNumbers, putGround } from "./ground";
import { sectionsAccount } from "./points";
import { deadIn, idleDragOf, powerOffNumbers, putPowerOff } from "./power-off";
import { putPowered } from "./powered";

/** Speeds, climb, time and distance, runs and turns of a loading on its motors; of one without, what needs none. */
export function* putPerformance(
  set: FigureSet, memory: Memory, model: FlightModel, loaded: Loaded, points: FlightPoints, table: LevelTable,
): Generator<void, void> {
  const { powerplants, sources } = settle({ powerplants: set.design.powerplants, sources: set.design.sources });
  const motors = yield* powerIn(memory, powerplants, sources, model.air, table.range[1]);
  const power = motors?.at;
  const throttle = power?.throttleFor(table.drag(points.cruise.speed) ?? NaN, points.cruise.speed);
  const fed = power ? fedBy(power, points, throttle, sources) : [];
  const dead = deadIn(memory, powerplants, model.air, table.range);
  const idleDrag = dead.length > 0 ? idleDragOf(dead, model.air) : undefined;
  const work = (mass: number, near?: Near): Performance => {
    const heavier = mass / loaded.mass;
    // Drag and stall of another weight: the same lift coefficients at other speeds.
    const stall = { ...points.stall, speed: points.stall.speed * Math.sqrt(heavier) };
    const drag = heavierDrag(table, heavier);
    return performanceOf({ model, loaded: { ...loaded, mass }, points: { ...points, stall }, table: { ...table, drag }, power: motors?.table, thinAir: motors?.thinAir, idleDrag, fed }, near);
  };
  const nominal = work(loaded.mass);
  set.facts.flight = { model, loaded, points, table, performance: nominal, ...(motors && { power: motors.at, flown: motors.table, fed, throttle }) };
  yield;
  const mass = set.value("mass.total")!;
  const near: Near = { ...nominal, stallSpeed: points.stall.speed };
  const of = yield* across({ middle: near, changes: [] }, { mass: { quantity: mass, step: 1e-3 * mass.value } }, (at, { mass: kg }) =>
    numbersOf(kg === loaded.mass ? nominal : work(kg, at)));
  if (of) {
    putFigures(set, nominal, power, of);
    putPowerOff(set, nominal, dead, of);
    putGround(set, of);
  }
  if (power) putPowered(set, model, loaded, points, throttle, power, powerplants, mapsIn(memory));
  putSeries(set, table, nominal);
}

/** Which share of the power each source gives, as at cruise. */
function fedBy(power: FlightPower, { cruise }: FlightPoints, throttle = 1, sources: readonly Parameters<typeof storeOf>[0][]): FedFrom[] {
  const runs = power.run(cruise.speed, throttle).sources;
  const whole = runs.reduce((sum, run) => sum + ("power" in run ? run.power : 0), 0);
  return sources.flatMap((source): FedFrom[] => {
    const store = storeOf(source);
    const run = runs.find(({ path }) => path === source.path);
    return "missing" in store || !run || !("power" in run) || !(whole > 0) ? [] : [{ path: source.path, store, share: run.power / whole }];
  });
}

function numbersOf(performance: Performance) {
  const { topSpeed, climb, steepest, longest, farthest, turn, ceiling, thrustMargin } = performance;
  return {
    ...groundNumbers(performance), ...powerOffNumbers(performance), topSpeed, thrustMargin, climb: climb?.rate, steepest: steepest?.angle, endurance: longest?.time,
    range: farthest?.distance, rangeSpeed: farthest?.speed, turn: turn?.radius, ceiling: ceiling?.altitude,
  };
}

function putFigures(
  set: FigureSet, { climb, steepest, longest, farthest, ceiling }: Performance, power: FlightPower | undefined,
  of: (name: keyof ReturnType<typeof numbersOf>, dimension: DimensionName) => Quantity | undefined,
): void {
  const speedAt = (value: number | undefined): Input[] => (value === undefined ? [] : [{ name: "at", value: quantity(value, dimensions.speed) }]);
  const powered = "half-charged packs all the way, thrust along the path and no lift from it, the airframe in the slipstream, motors getting warm; bands are those of the weight alone";
  const account = (formula: string, source: string, inputs: readonly Input[] = [], notModelled = `${powered}. Of the drag: ${parasiteNotModelled} ${sectionsAccount}`): Account =>
    ({ formula, inputs: [...named(set, "mass.total", "flight.stall_speed"), ...inputs], source, notModelled });
  const mechanics = "J. D. Anderson, Introduction to Flight, ch. 6";
  if (power) {
    set.put("flight.max_speed", of("topSpeed", "speed"), account("highest speed at which thrust at full throttle is the drag of level flight", mechanics));
    set.put("flight.climb_rate", of("climb", "speed"), account("speed × sine of the path at which thrust − drag holds weight × sine, greatest over speed", mechanics, speedAt(climb?.speed)));
    set.put("flight.climb_angle", of("steepest", "angle"), account("angle of the path at which thrust − drag holds weight × sine, greatest over speed", mechanics, speedAt(steepest?.speed)));
    const charge: Input = { name: "kept for the landing", value: `${reserve * 100} % of the usable charge (common practice, no source)` };
    const electric = "electric endurance: L. W. Traub, J. Aircraft 48(2), 2011; packs by their own curve of volts over charge, from full";
    set.put("flight.endurance", of("endurance", "time"), account("usable charge less the reserve / what level flight takes, at the speed where that is least", electric, [...speedAt(longest?.speed), charge]));
    set.put("flight.range", of("range", "length"), account("speed × time on the usable charge less the reserve, where that is greatest, in still air", electric, [...speedAt(farthest?.speed), charge]));
    set.put("flight.best_range_speed", of("rangeSpeed", "speed"), account("speed of least power from the packs over speed, level", electric, [charge]));
    set.put("flight.ceiling", of("ceiling", "length"), account(`height of the standard air in which the best climb has faded to 100 ft/min${ceiling?.above ? "; it still climbs at 11 km, where this ends" : ""}`, mechanics, [],
      `${powered}; packs and motors in the cold; Reynolds numbers are those of the field. The law of your country sets a height far below.`));
    set.put("power.thrust_margin", of("thrustMargin", "ratio"), account("thrust at full throttle / drag of level flight, at 1.3 × flight.stall_speed", "definition"));
  }
  set.put("flight.turn_radius", of("turn", "length"), account("speed² / (g₀ × tan 45°) at 1.3 × flight.stall_speed", mechanics, [], "wind."));
}

function putSeries(set: FigureSet, { flights }: LevelTable, { thrust, electric }: Performance): void {
  if (thrust.length === 0) return;
  const x: Row = { title: "Speed", dimension: "speed", values: flights.map(({ speed }) => speed) };
  const drag = set.series().find(({ name }) => name === "flight.drag")?.lines.find(({ title }) => title === "Drag")?.values ?? [];
  const weight = (set.value("mass.total")?.value ?? NaN) * standardGravity;
  const climb = flights.map(({ speed }, i) => (thrust[i] === undefined || drag[i] === undefined ? undefined : ((thrust[i] - drag[i]) * speed) / weight));
  set.putSeries({
    name: "flight.thrust", title: "Thrust at full throttle and drag over speed", x,
    lines: [{ title: "Thrust", dimension: "force", values: thrust }, { title: "Drag", dimension: "force", values: drag }],
  });
  set.putSeries({
    name: "flight.power", title: "Power from the packs in level flight, and climb at full throttle, over speed", x,
    lines: [{ title: "Power", dimension: "power", values: electric }, { title: "Climb", dimension: "speed", values: climb }],
  });
}
