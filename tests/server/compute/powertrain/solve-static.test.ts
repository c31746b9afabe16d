import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import type { PlantRun } from "../../../../server/compute/powertrain/plant-run";
import { solveStatic, type SourceRun } from "../../../../server/compute/powertrain/solve-static";
import { propellerMap } from "../../../../server/compute/propeller/propeller-map";
import type { Powerplant, Propeller, Source } from "../../../../server/model/design/power";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { anyPlant, motor, number, pack, plant, source } from "./plants";

const air = atmosphere({ altitude: 0 })!;
const solve = (powerplants: Powerplant[], sources: Source[] = [source()], more: { throttle?: number; state?: "full" | "nominal" } = {}) => {
  const { powerplants: runs, sources: fed } = solveStatic({ powerplants, sources, air, state: "nominal", ...more });
  return { runs: runs as readonly PlantRun[], fed: fed as readonly SourceRun[] };
};

describe("any powerplants on one pack", () => {
  it("close the balance of energy: pack = leads + controllers + motor heat + shafts", () => {
    fc.assert(fc.property(fc.array(anyPlant, { minLength: 1, maxLength: 4 }), number(0.1, 1), (plants, throttle) => {
      const { runs, fed: [fed] } = solve(plants.map((p, i) => ({ ...p, path: `p${i}` })), undefined, { throttle });
      for (const run of runs) {
        expectNear(run.shaftPower + run.motorHeat + run.controllerLoss + run.leadLoss, run.electricPower, 1e-7); // of the solver
        if (run.rotation > 0) expectNear(run.propeller!.power, run.shaftPower, 1e-6);
        expect(run.efficiency).toBeLessThan(1);
      }
      expectNear(fed.volts, fed.source.emf.nominal - fed.current * fed.source.resistance, 1e-8);
      expectNear(runs.reduce((sum, run) => sum + run.packCurrent, 0), fed.current, 1e-12);
      expectNear(fed.heat + fed.power, fed.source.emf.nominal * fed.current, 1e-7);
    }), { numRuns: 100 });
  });

  it("pull less than momentum allows for their shaft power", () => {
    fc.assert(fc.property(anyPlant, (one) => {
      const { runs: [run] } = solve([one]);
      if (run.rotation > 0) expect(run.figureOfMerit).toBeLessThan(1);
    }), { numRuns: 50 });
  });

  it("each pull less than they would alone, and their order does not matter", () => {
    fc.assert(fc.property(anyPlant, anyPlant, (a, b) => {
      const [first, second] = [{ ...a, path: "a" }, { ...b, path: "b" }];
      const { runs: both } = solve([first, second]);
      const { runs: turned } = solve([second, first]);
      expect(both[0].thrust).toBeLessThanOrEqual(solve([first]).runs[0].thrust);
      expectNear(turned[1].thrust, both[0].thrust, 1e-6);
      expectNear(turned[0].motorCurrent, both[1].motorCurrent, 1e-6);
    }), { numRuns: 50 });
  });
});

describe("one powerplant", () => {
  it("pulls and draws more just charged, and less at part throttle", () => {
    const [nominal, full, half] = [{}, { state: "full" as const }, { throttle: 0.5 }].map((more) => solve([plant()], undefined, more).runs[0]);
    expect(full.thrust).toBeGreaterThan(nominal.thrust);
    expect(full.motorCurrent).toBeGreaterThan(nominal.motorCurrent);
    expect(half.thrust).toBeLessThan(0.5 * nominal.thrust);
    expectNear(half.packCurrent, 0.5 * half.motorCurrent, 1e-12);
  });

  it("is still at no throttle, and while the volts do not overcome its friction", () => {
    for (const throttle of [0, 0.001]) {
      const { runs: [run], fed: [fed] } = solve([plant()], undefined, { throttle });
      expect(run).toMatchObject({ rotation: 0, thrust: 0, shaftPower: 0, efficiency: 0 });
      expect(run.propeller).toBeUndefined();
      expect(Number.isFinite(fed.volts)).toBe(true);
    }
  });

  it("says what it took for granted", () => {
    expect(solve([plant()]).runs[0].assumed).toEqual(["esc.resistance", "battery.resistance"]);
    expect(solve([plant({ controller: { path: "esc", resistance: 0.003 }, motor: { ...motor, noLoadCurrent: 0 } })], [source(pack({ resistance: 0.02 }))]).runs[0].assumed)
      .toEqual(["motor.no_load_current"]);
  });

  it("a better rated controller loses less", () => {
    const loss = (maxCurrent?: number) => {
      const { runs: [run] } = solve([plant({ controller: { path: "esc", maxCurrent } })]);
      return run.controllerLoss / run.motorCurrent ** 2;
    };
    expectNear(loss(80), 0.005, 1e-9); // 0.4 V at rated current
    expectNear(loss(20), 0.01, 1e-9); // no more than 10 mohm
    expectNear(loss(400), 0.002, 1e-9); // no less than 2
    expectNear(loss(), 0.006, 1e-9);
  });
});

describe("what is missing", () => {
  const reason = (over: Partial<Powerplant>, sources = [source()]) =>
    solveStatic({ powerplants: [plant(over)], sources, air, state: "nominal" }).powerplants[0];
  it.each([
    [{ motor: undefined }, "motor"],
    [{ motor: { ...motor, kv: Number.NaN } }, "motor.kv"],
    [{ motor: { ...motor, resistance: 0 } }, "motor.resistance"],
    [{ motor: { ...motor, gearRatio: 0 } }, "motor.gear_ratio"],
    [{ propeller: undefined }, "propeller"],
    [{ propeller: { ...propellerOf(12, 6, "thin"), diameter: 0 } }, "propeller.diameter"],
    [{ propeller: { ...propellerOf(12, 6, "thin"), pitch: Number.NaN } }, "propeller.pitch"],
    [{ propeller: undefined, fan: { diameter: 0.07 } }, "fan.measured"],
    [{ source: undefined }, "battery"],
    [{ source: "elsewhere" }, "battery"],
  ] as const)("%# is %j", (over, missing) => expect(reason(over)).toEqual({ path: "nose", missing }));

  it("of the pack shows at the pack, and leaves its powerplants without a battery", () => {
    const result = solveStatic({ powerplants: [plant()], sources: [source(pack({ cells: 0 }))], air, state: "nominal" });
    expect(result.powerplants).toEqual([{ path: "nose", missing: "battery" }]);
    expect(result.sources).toEqual([{ path: "pack", missing: "cells" }]);
  });

  it("of one powerplant leaves the others running, and is said at the pack", () => {
    const { runs, fed: [fed] } = solve([plant({ path: "left" }), plant({ path: "right", motor: undefined })]);
    expect(runs[0].thrust).toBeGreaterThan(0);
    expect(fed.leftOut).toEqual(["right"]);
  });
});

describe("sources", () => {
  it("are solved each for itself", () => {
    const both = [source(), { ...source(), path: "other" }];
    const { runs } = solve([plant({ path: "left" }), plant({ path: "right", source: "other" })], both);
    expectNear(runs[0].thrust, solve([plant()]).runs[0].thrust, 1e-12);
    expectNear(runs[1].thrust, runs[0].thrust, 1e-12);
  });

  it("give what each pack of them gives", () => {
    const wired: Source = { path: "pack", wired: "parallel", packs: [pack({ path: "a" }), pack({ path: "b", capacity: 2 * 3600 })] };
    const { fed: [fed] } = solve([plant()], [wired]);
    expectNear(fed.packs[0].current, (2 / 3) * fed.current, 1e-9); // by capacity: resistances go inversely
    expectNear(fed.packs[1].maxCurrent!, 60, 1e-12);
  });

  it("at rest have their open voltage", () => {
    const { fed: [fed] } = solve([]);
    expectNear(fed.volts, 4 * 3.84, 1e-12);
    expect(fed.current).toBe(0);
  });
});

it("a mirrored pair can share one map of its propeller, handed in", () => {
  let asked = 0;
  const mapOf = (propeller: Propeller) => {
    asked++;
    return propellerMap(propeller);
  };
  const pair = [plant({ path: "left" }), plant({ path: "right", propeller: { ...propellerOf(12, 6, "thin"), clockwise: false } })];
  const own = solveStatic({ powerplants: pair, sources: [source()], air, state: "nominal", mapOf }).powerplants as readonly PlantRun[];
  expect(asked).toBe(2);
  expectNear(own[0].thrust, own[1].thrust, 1e-12);
  expectNear(own[0].thrust, solve(pair).runs[0].thrust, 1e-12);
});
