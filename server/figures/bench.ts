import { dimensions, type DimensionName } from "../../grammar/units/dimension";
import { multiply, plain, quantity, type Quantity } from "../../grammar/units/quantity";
import { atmosphere } from "../compute/atmosphere/atmosphere";
import { benchQuantities, compareBench, type BenchDifference, type BenchQuantity } from "../compute/powertrain/bench";
import { calibrateSteps, inputOf, misfit, withInput, type Calibration, type Calibrations, type Movable } from "../compute/powertrain/calibrate";
import { propagateSettled } from "../compute/tolerance/propagate";
import type { Design, Settled } from "../model/design/design";
import type { Bench, Powerplant } from "../model/design/power";
import { settler } from "../model/design/settle";
import { quantityOf } from "./banded";
import type { Account, Input } from "./figure";
import type { FigureSet } from "./figure-set";
import type { Memory } from "./memory";
import { mapsIn } from "./propeller-maps";

/** A powerplant beside its runs on the stand. */
export interface BenchFact {
  /** The powerplant's path. */
  readonly plant: string;
  /** The runs, and what is computed for them: as calibrated, where that is asked for. */
  readonly runs: readonly { readonly bench: Bench; readonly differences: readonly BenchDifference[] }[];
  /** What would explain those of the runs that `calibrations` rest on; absent where they are met as they stand. */
  readonly calibrations?: Calibrations;
  readonly calibratedBy: readonly string[];
  /** The input that was moved, where a run asks for that. */
  readonly moved?: Calibration;
}

/** How the figures of a run end, by what was measured; the words of the `bench` block. */
export const benchFigures: Readonly<Record<BenchQuantity, "rpm" | "amps" | "thrust">> = { rotation: "rpm", amps: "amps", thrust: "thrust" };

/** The dimension of each input that may be moved. */
export const inputDimensions: Readonly<Record<Movable, DimensionName>> = {
  "motor.kv": "motor_constant", "motor.resistance": "resistance", "motor.no_load_current": "current", "propeller.pitch": "length",
};

type Tested<N = number> = Pick<Design<N>, "powerplants" | "sources" | "field" | "benches">;

/** Powerplants beside their runs on the stand, in steps; where a run asks for it, all that follows rests on what it shows. */
export function* putBench(set: FigureSet, memory: Memory): Generator<void, void> {
  const { powerplants, sources, field, benches } = set.loading.design;
  if (benches.length === 0) return;
  const tested = settler({ powerplants, sources, field, benches });
  const moves = new Map<string, { readonly calibrations: Calibrations; readonly moved?: Calibration }>();
  for (const plant of tested.nominal.powerplants) {
    const found = yield* calibrationOf(tested.nominal, plant, memory);
    if (found) moves.set(plant.path, found);
  }
  const calibrated = powerplants.map((plant) => {
    const moved = moves.get(plant.path)?.moved;
    const written = moved && inputOf(plant, moved.input);
    return written ? withInput(plant, moved.input, multiply(written, plain(moved.to / moved.from))) : plant;
  });
  set.facts.calibrated = calibrated.some((plant, i) => plant !== powerplants[i]) ? { ...set.loading.design, powerplants: calibrated } : undefined;
  const shown = settler({ powerplants: calibrated, sources, field, benches });
  set.facts.bench = powerplants.filter(({ path }) => benches.some(({ plant }) => plant === path)).map(({ path }): BenchFact => ({
    plant: path, ...moves.get(path), calibratedBy: used(tested.nominal.benches.filter(({ plant }) => plant === path)).map((bench) => bench.path),
    runs: shown.nominal.benches.filter(({ plant }) => plant === path).map((bench) => ({ bench, differences: differences(shown.nominal, bench, memory) })),
  }));
  putFigures(set, shown, memory);
}

/** Runs that ask for calibration go before those that don't. */
const used = (benches: readonly Bench[]): readonly Bench[] => {
  const asking = benches.filter(({ calibrate }) => calibrate);
  return asking.length > 0 ? asking : benches;
};

function* calibrationOf(
  { benches, sources, field }: Settled<Tested<Quantity>>, plant: Powerplant, memory: Memory,
): Generator<void, { readonly calibrations: Calibrations; readonly moved?: Calibration } | undefined> {
  const runs = used(benches.filter((bench) => bench.plant === plant.path));
  const air = atmosphere(field);
  const source = sources.find(({ path }) => path === plant.source);
  if (runs.length === 0 || !air) return undefined;
  const standing = misfit(plant, source, runs, air, mapsIn(memory));
  // Met as closely as a stand measures: nothing is to be moved.
  if (typeof standing !== "number" || standing <= 1) return undefined;
  const { motor, propeller, controller } = plant;
  const measured = runs.map(({ throttle, volts, amps, rotation, thrust }) => ({ throttle, volts, amps, rotation, thrust }));
  const asked = { motor, propeller, controller: controller && { ...controller, path: "" }, source, measured, field };
  const calibrations = yield* memory.recallSteps("calibration", asked, () => calibrateSteps(plant, source, runs, air, mapsIn(memory)));
  if ("missing" in calibrations) return undefined;
  const [best] = calibrations.moves;
  return { calibrations, ...(runs.some(({ calibrate }) => calibrate) && best && best.misfit < standing ? { moved: best } : {}) };
}

function differences({ powerplants, sources, field }: Settled<Tested<Quantity>>, bench: Bench, memory: Memory): readonly BenchDifference[] {
  const plant = powerplants.find(({ path }) => path === bench.plant);
  const air = atmosphere(field);
  const compared = plant && air && compareBench(plant, sources.find(({ path }) => path === plant.source), bench, air, mapsIn(memory));
  return !compared || "missing" in compared ? [] : compared;
}

function putFigures(set: FigureSet, tested: ReturnType<typeof settler<Tested<Quantity>>>, memory: Memory): void {
  const banded = propagateSettled(tested, (at) => Object.fromEntries(at.benches.flatMap((bench) =>
    differences(at, bench, memory).map(({ quantity, off }) => [`${bench.path} ${quantity}`, 1 + off] as const))));
  const { benches } = set.loading.design;
  for (const [i, { path, throttle, volts }] of benches.entries()) for (const measured of benchQuantities) {
    const at = benches[i][measured];
    const ratio = quantityOf(banded[`${path} ${measured}`], "ratio");
    if (!at || !ratio) continue;
    const account: Account = {
      formula: `${benchFigures[measured]} where motor, propeller and controller agree at the run's volts and throttle / ${benchFigures[measured]} measured`,
      inputs: [
        { name: "computed", value: multiply(at, plain(ratio.value)) }, { name: "measured", value: at },
        { name: "throttle", value: throttle }, volts ? { name: "volts", value: volts } : { name: "volts", value: "of the battery, half charged" },
        ...calibratedInputs(set),
      ],
      source: "as power.static_thrust; the run: measured by the designer",
      notModelled: "the air of the stand (that of the field is taken), walls and the stand itself in the stream, the motor getting warm, part throttle other than as an average of volts",
    };
    set.put(`power.${path}.bench_${benchFigures[measured]}`, ratio, account);
  }
}

/** What was moved to meet runs on the stand, for accounts: each input as calibrated and as written. */
export const calibratedInputs = ({ facts: { bench } }: FigureSet): Input[] => (bench ?? []).flatMap(({ plant, moved, calibratedBy }): Input[] => {
  if (!moved) return [];
  const value = (si: number) => quantity(si, dimensions[inputDimensions[moved.input]]);
  return [
    { name: `${plant}.${moved.input}, calibrated by ${calibratedBy.join(", ")}`, value: value(moved.to) },
    { name: `${plant}.${moved.input} as written`, value: value(moved.from) },
  ];
});
