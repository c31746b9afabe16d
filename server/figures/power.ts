import { dimensions, type DimensionName } from "../../grammar/units/dimension";
import { divide, quantity, type Quantity } from "../../grammar/units/quantity";
import { atmosphere } from "../compute/atmosphere/atmosphere";
import { standardGravity } from "../compute/constants";
import type { PlantRun } from "../compute/powertrain/plant-run";
import { solveStatic, type StaticResult } from "../compute/powertrain/solve-static";
import { propagateSettled } from "../compute/tolerance/propagate";
import type { Design, Field } from "../model/design/design";
import type { Powerplant, Source } from "../model/design/power";
import { settler } from "../model/design/settle";
import { quantityOf } from "./banded";
import { calibratedInputs } from "./bench";
import { currentMargin } from "./current-margin";
import type { Account, Input } from "./figure";
import type { FigureSet } from "./figure-set";
import type { Memory } from "./memory";
import { mapsIn } from "./propeller-maps";
import { named } from "./wing";

const source = "blade elements and momentum with finite-blade loss: H. Glauert, Elements of Aerofoil and Airscrew Theory; " +
  "blades: statistics of the UIUC Propeller Database, Brandt et al.; motor: M. Drela, First-Order DC Electric Motor Model, 2007";

const notModelled = "air drawn past fuselage and wing, blades bending, the motor getting warm, cold or worn cells, the controller's switching losses";

/** The powered part of a design, without weights or places. */
interface Drives<N = number> {
  readonly powerplants: readonly Powerplant<N>[];
  readonly sources: readonly Source<N>[];
  readonly field: Field<N>;
}

const drivesOf = ({ powerplants, sources, field }: Design<Quantity>): Drives<Quantity> => ({ powerplants, sources, field });

/** What stands still at full throttle: thrust at nominal volts, limits at full charge. */
export function* putPower(set: FigureSet, memory: Memory): Generator<void, void> {
  const { design } = set;
  if (design.powerplants.length === 0) return;
  const drives = settler(drivesOf(design));
  const nominal = solve(drives.nominal, "nominal", memory);
  yield;
  const full = solve(drives.nominal, "full", memory);
  yield;
  if (!nominal || !full) return;
  set.facts.power = { nominal, full };
  if (runsOf(nominal).length !== design.powerplants.length) return;
  const banded = propagateSettled(drives, (d) => numbersOf(solve(d, "nominal", memory), d.powerplants, solve(d, "full", memory)));
  const take = (key: string, dimension: DimensionName) => quantityOf(banded[key], dimension);
  const inputs = inputsOf(set, nominal);
  const account = (formula: string, ...more: string[]): Account => ({ formula, inputs: [...inputs, ...named(set, ...more)], source, notModelled });
  set.put("power.static_thrust", take("thrust", "force"), account("Σ thrust along each shaft × its forward share, where motor, propeller, controller and pack agree"));
  set.put("power.static_current", take("current", "current"), account("Σ current of all packs"));
  set.put("power.static_power", take("power", "power"), account("Σ terminal volts × current of all packs"));
  set.put("power.efficiency", take("efficiency", "ratio"), account("Σ shaft power / Σ power at the packs' terminals"));
  set.put("power.current_margin", take("margin", "ratio"), account("least of allowed / actual current over motors, controllers and packs, all packs fully charged"));
  putPlants(set, nominal, take, account);
  putHeat(set, full, take, account);
  putShares(set);
}

/** One run of all powerplants; propeller maps and whole runs are remembered. */
function solve(drives: Drives, state: "nominal" | "full", memory: Memory): StaticResult | undefined {
  const air = atmosphere(drives.field);
  if (!air) return undefined;
  return memory.recall(`static ${state}`, drives, () => solveStatic({
    powerplants: drives.powerplants, sources: drives.sources, air, state,
    mapOf: mapsIn(memory),
  }));
}

export const runsOf = (result: StaticResult): PlantRun[] => result.powerplants.filter((p): p is PlantRun => "thrust" in p);

function numbersOf(nominal: StaticResult | undefined, plants: readonly Powerplant[], full: StaticResult | undefined): Record<string, number> {
  if (!nominal || !full) return {};
  const runs = runsOf(nominal);
  const axis = new Map(plants.map((plant) => [plant.path, plant.thrustAxis]));
  const sum = (pick: (run: PlantRun) => number) => runs.reduce((total, run) => total + pick(run), 0);
  const power = sum((run) => run.electricPower);
  return {
    thrust: sum((run) => -run.thrust * (axis.get(run.path)?.[0] ?? -1)),
    current: sum((run) => run.packCurrent),
    power,
    ...(power > 0 ? { efficiency: sum((run) => run.shaftPower) / power } : {}),
    ...marginOf(full, plants),
    ...Object.fromEntries(runsOf(full).map((run) => [`${run.path}.heat`, run.motorHeat])),
    ...Object.fromEntries(runs.flatMap((run) => [
      [`${run.path}.rotation`, run.rotation], [`${run.path}.thrust`, run.thrust], [`${run.path}.current`, run.packCurrent],
    ])),
  };
}

function marginOf(full: StaticResult, plants: readonly Powerplant[]): { margin?: number } {
  const margin = currentMargin(full, plants);
  return margin === undefined ? {} : { margin };
}

function putPlants(
  set: FigureSet, nominal: StaticResult, take: (key: string, dimension: DimensionName) => Quantity | undefined, account: (formula: string) => Account,
): void {
  const runs = runsOf(nominal);
  for (const { path } of runs) {
    const own = (name: string, key: string, dimension: DimensionName, formula: string) => {
      set.put(`power.${path}.${name}`, take(`${path}.${key}`, dimension), account(formula));
      // A single powerplant's rpm stands without the path too; its thrust and current are those of the whole.
      if (runs.length === 1 && name === "static_rpm") set.put("power.static_rpm", take(`${path}.${key}`, dimension), account(formula));
    };
    own("static_rpm", "rotation", "rotation", "where the motor's torque is what the propeller takes");
    own("static_thrust", "thrust", "force", "thrust coefficient × air density × (rotation/2π)² × diameter⁴");
    own("static_current", "current", "current", "(volts at the motor − rotation / kv) / resistance, seen from the pack");
  }
}

/** What heats each motor, over its weight. */
function putHeat(
  set: FigureSet, full: StaticResult, take: (key: string, dimension: DimensionName) => Quantity | undefined, account: (formula: string) => Account,
): void {
  for (const { path } of runsOf(full)) {
    const [heat, weight] = [take(`${path}.heat`, "power"), set.loading.design.loads.find((load) => load.path === `${path}.motor`)?.weight];
    if (!heat || !weight || !(weight.value > 0)) continue;
    const told = account("(motor current² × resistance + volts behind the resistance × no-load current) / weight of the motor, packs fully charged");
    set.put(`power.${path}.motor_heat`, divide(heat, weight), {
      ...told, inputs: [...told.inputs, { name: "heat", value: heat }, { name: `weight of ${path}.motor`, value: weight }],
    });
  }
}

function putShares(set: FigureSet): void {
  const mass = set.value("mass.total");
  const thrust = set.value("power.static_thrust");
  const power = set.value("power.static_power");
  if (!mass || !thrust || !power) return;
  const weight = { ...divide(mass, quantity(1 / standardGravity, accelerationInverse)) };
  set.put("power.thrust_to_weight", divide(thrust, weight), {
    formula: "power.static_thrust / (mass.total × g₀)", inputs: named(set, "power.static_thrust", "mass.total"), source: "definition; g₀ 9.80665 m/s²", notModelled,
  });
  set.put("power.specific", divide(power, mass), {
    formula: "power.static_power / mass.total", inputs: named(set, "power.static_power", "mass.total"), source: "definition",
  });
}

const accelerationInverse = [-1, 0, 2, 0, 0, 0] as const;

function inputsOf(set: FigureSet, nominal: StaticResult): Input[] {
  const air = atmosphere(settler(set.loading.design.field).nominal);
  const amount = (value: number, dimension: DimensionName) => quantity(value, dimensions[dimension]);
  const sources = nominal.sources.flatMap((s): Input[] => ("missing" in s ? [] : [
    { name: `${s.path} at rest, half charged`, value: amount(s.source.emf.nominal, "voltage") },
    { name: `${s.path} resistance`, value: amount(s.source.resistance, "resistance") },
    { name: `${s.path} at its terminals`, value: amount(s.volts, "voltage") },
  ]));
  const runs = runsOf(nominal).flatMap((run): Input[] => [
    { name: `${run.path} motor current`, value: amount(run.motorCurrent, "current") },
    { name: `${run.path} shaft power`, value: amount(run.shaftPower, "power") },
    ...(run.assumed.length > 0 ? [{ name: `${run.path} taken for granted`, value: run.assumed.join(", ") }] : []),
  ]);
  return [...sources, ...runs, ...calibratedInputs(set), ...(air ? [{ name: "air density", value: amount(air.density, "density") }] : [])];
}
