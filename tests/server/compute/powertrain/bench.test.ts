import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { benchPoint, compareBench, type BenchDifference, type BenchPoint, type BenchRun } from "../../../../server/compute/powertrain/bench";
import { calibrate, type Calibrations, type Movable } from "../../../../server/compute/powertrain/calibrate";
import type { PlantRun } from "../../../../server/compute/powertrain/plant-run";
import { runAt } from "../../../../server/compute/powertrain/run-at";
import type { Powerplant } from "../../../../server/model/design/power";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { motor, number, pack, plant, source } from "./plants";

const air = atmosphere({ altitude: 0 })!;
const throttles = [{ throttle: 1, volts: 15 }, { throttle: 0.5, volts: 15.6 }];
const runs = (of: Powerplant): BenchRun[] => throttles.map((at) => ({ ...at, ...(benchPoint(of, undefined, at, air) as BenchPoint) }));
const shifted = (input: Movable, factor: number): Powerplant => {
  if (input === "propeller.pitch") return plant({ propeller: { ...propellerOf(12, 6, "thin"), pitch: factor * propellerOf(12, 6, "thin").pitch } });
  const keys = { "motor.kv": "kv", "motor.resistance": "resistance", "motor.no_load_current": "noLoadCurrent" } as const;
  return plant({ motor: { ...motor, [keys[input]]: factor * motor[keys[input]] } });
};

describe("a run on the stand", () => {
  it("is what the powerplant does at the volts of its controller", () => {
    // The same through a pack of those volts without resistance: the leads are before the place of measuring.
    const { powerplants: [one] } = runAt({
      powerplants: [plant({ controller: { path: "esc", resistance: 0.006 } })], sources: [source(pack({ resistance: 1e-6 }))], air, state: "full",
    });
    const run = one as PlantRun;
    const off = compareBench(plant({ controller: { path: "esc", resistance: 0.006 } }), undefined, {
      throttle: 1, volts: 16.8, amps: run.packCurrent, rotation: run.rotation, thrust: run.thrust,
    }, air) as readonly BenchDifference[];
    expect(off.map(({ quantity }) => quantity)).toEqual(["amps", "rotation", "thrust"]);
    for (const each of off) expect(Math.abs(each.off)).toBeLessThan(1e-5); // a micro-ohm of pack
  });

  it("without volts goes by the source, and without either says what is missing", () => {
    const [{ computed }] = compareBench(plant(), source(), { throttle: 1, thrust: 10 }, air) as readonly BenchDifference[];
    expectNear(computed, (runAt({ powerplants: [plant()], sources: [source()], air, state: "nominal" }).powerplants[0] as PlantRun).thrust, 1e-9);
    expect(compareBench(plant(), undefined, { throttle: 1, thrust: 10 }, air)).toEqual({ missing: "battery" });
    expect(compareBench(plant({ motor: undefined }), undefined, { throttle: 1, volts: 15 }, air)).toEqual({ missing: "motor" });
  });

  it("tells only of what was measured", () => {
    expect(compareBench(plant(), undefined, { throttle: 1, volts: 15 }, air)).toEqual([]);
    const [only] = compareBench(plant(), undefined, { throttle: 1, volts: 15, rotation: 800 }, air) as readonly BenchDifference[];
    expectNear(only.off, only.computed / 800 - 1, 1e-12);
  });
});

describe("calibration finds the input that runs were made with", () => {
  it.each<readonly [Movable, number]>([
    ["motor.kv", 1.08], ["motor.kv", 0.9], ["motor.resistance", 2.2], ["motor.no_load_current", 3.1], ["propeller.pitch", 1.15], ["propeller.pitch", 0.8],
  ])("%s × %d", (input, factor) => {
    const { misfit, moves } = calibrate(plant(), undefined, runs(shifted(input, factor)), air) as Calibrations;
    expect(moves[0].input).toBe(input);
    expectNear(moves[0].to / moves[0].from, factor, 0.005); // what the search leaves, 1e-4, over how little no-load current shows
    expect(moves[0].meets).toBe(true);
    expect(moves[0].misfit).toBeLessThan(0.05);
    expect(misfit).toBeGreaterThan(moves[0].misfit);
  });

  it("whatever the kv, from one run of rpm and current", async () => {
    await fc.assert(fc.asyncProperty(number(0.8, 1.25), async (factor) => {
      const [{ throttle, volts, amps, rotation }] = runs(shifted("motor.kv", factor));
      const { moves } = calibrate(plant(), undefined, [{ throttle, volts, amps, rotation }], air) as Calibrations;
      expectNear(moves.find((move) => move.input === "motor.kv")!.to / motor.kv, factor, 0.003);
      await new Promise((resolve) => void setImmediate(resolve));
    }), { numRuns: 8, seed: 1_912 });
  });

  it("rpm alone does not tell which: more than one meets it", () => {
    const [{ throttle, volts, rotation }] = runs(shifted("motor.kv", 1.03));
    const { moves } = calibrate(plant(), undefined, [{ throttle, volts, rotation }], air) as Calibrations;
    expect(moves.filter((move) => move.meets).length).toBeGreaterThan(1);
  });

  it("two wrong inputs are met by neither", () => {
    const wrong = plant({ motor: { ...motor, kv: 1.15 * motor.kv }, propeller: { ...propellerOf(12, 6, "thin"), pitch: 0.75 * propellerOf(12, 6, "thin").pitch } });
    const { moves } = calibrate(plant(), undefined, runs(wrong), air) as Calibrations;
    expect(moves.every((move) => !move.meets)).toBe(true);
  });

  it("leaves alone what has nothing to move", () => {
    const propeller = { ...propellerOf(12, 6, "thin"), stations: [0.2, 1].map((radius) => ({ radius, chord: 0.12, angle: 0.25 })) };
    const inputs = (of: Powerplant) => (calibrate(of, undefined, [{ throttle: 1, volts: 15, rotation: 900 }], air) as Calibrations).moves.map((move) => move.input).sort();
    expect(inputs(plant({ propeller }))).toEqual(["motor.kv", "motor.no_load_current", "motor.resistance"]);
    expect(inputs(plant({ motor: { ...motor, noLoadCurrent: 0 } }))).toEqual(["motor.kv", "motor.resistance", "propeller.pitch"]);
    expect(calibrate(plant({ propeller: undefined }), undefined, [{ throttle: 1, volts: 15, rotation: 900 }], air)).toEqual({ missing: "propeller" });
  });
});
