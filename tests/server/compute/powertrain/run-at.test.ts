import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import type { PlantRun } from "../../../../server/compute/powertrain/plant-run";
import { runAt, type RunCase, type SourceRun } from "../../../../server/compute/powertrain/run-at";
import { stoppedPropellerDrag, windmillFriction, windmillingPropeller } from "../../../../server/compute/drag/stopped-propeller";
import { idealEfficiency } from "../../../../server/compute/propeller/momentum";
import type { Powerplant } from "../../../../server/model/design/power";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { anyAir } from "../propeller/arbitrary";
import { anyPlant, number, plant, source } from "./plants";

const air = atmosphere({ altitude: 0 })!;
const solve = (powerplants: Powerplant[], more: Partial<RunCase> = {}) => {
  const { powerplants: runs, sources } = runAt({ powerplants, sources: [source()], air, state: "nominal", ...more });
  return { runs: runs as readonly PlantRun[], fed: sources[0] as SourceRun };
};

describe("any powerplants at any airspeed", () => {
  it("give finite numbers and close the balance of energy", () => {
    let [points, time] = [0, 0];
    const worst = { share: 0 };
    fc.assert(fc.property(
      fc.array(anyPlant, { minLength: 1, maxLength: 3 }), number(0, 1), number(0, 60), anyAir,
      (plants, throttle, speed, place) => {
        const start = performance.now();
        const { runs, fed } = solve(plants.map((each, i) => ({ ...each, path: `p${i}` })), { throttle, speed, air: place });
        time += performance.now() - start;
        points += runs.length;
        let scale = fed.source.emf.nominal * fed.current;
        let shafts = 0;
        for (const run of runs) {
          const { propeller } = run;
          const numbers = [run, propeller ?? {}].flatMap((each) => Object.values(each).filter((value) => typeof value === "number"));
          expect(numbers.every(Number.isFinite)).toBe(true);
          // Of the solver, by all that passes through propeller and motor: windmilling freely the shaft carries nothing.
          const flow = Math.abs(run.shaftPower) + Math.abs(run.thrust * speed) + run.motorHeat + run.electricPower;
          if (propeller) expect(Math.abs(propeller.power - run.shaftPower)).toBeLessThan(2e-6 * flow + 1e-9);
          expect(run.packCurrent).toBeGreaterThanOrEqual(0);
          shafts += (propeller?.power ?? 0) + run.motorHeat + run.controllerLoss + run.leadLoss;
          scale += Math.abs(run.thrust * speed);
        }
        const off = Math.abs(fed.source.emf.nominal * fed.current - fed.heat - shafts);
        if (scale > 1e-3) worst.share = Math.max(worst.share, off / scale);
      },
    ), { numRuns: 300, seed: 1_912 });
    console.log(`${points} running points, ${(time / points).toFixed(2)} ms each; energy open by ${worst.share.toExponential(1)} at most`);
    expect(worst.share).toBeLessThan(1e-3); // asked; the solver's own steps are far finer
  }, 60_000);

  // The curve standing still is good to 0.3 %.
  it("are at walking pace as they stand still", () => {
    fc.assert(fc.property(anyPlant, (one) => {
      const [still, crawling] = [0, 1e-3].map((speed) => solve([one], { speed }).runs[0]);
      expectNear(crawling.thrust, still.thrust, 0.005);
      expectNear(crawling.motorCurrent, still.motorCurrent, 0.005);
    }), { numRuns: 30, seed: 1_912 });
  });
});

describe("one powerplant", () => {
  it("pulls less the faster it flies, until it brakes", () => {
    const pulls = [0, 5, 10, 15, 20, 25, 30, 40].map((speed) => solve([plant()], { speed }).runs[0].thrust);
    for (let i = 1; i < pulls.length; i++) expect(pulls[i]).toBeLessThan(pulls[i - 1]);
    expect(pulls[pulls.length - 1]).toBeLessThan(0);
  });

  it("without throttle is turned by the air, brakes, and gives no current back", () => {
    const { runs: [run], fed } = solve([plant()], { throttle: 0, speed: 20 });
    expect(run.rotation).toBeGreaterThan(0);
    expect(run.thrust).toBeLessThan(0);
    expect(run.shaftPower).toBeLessThan(0);
    expect([run.packCurrent, run.efficiency, fed.current]).toEqual([0, 0, 0]);
    expectNear(-run.shaftPower, run.motorHeat, 1e-9);
  });

  it("stands where the air can't overcome its friction", () => {
    const { runs: [run] } = solve([plant()], { throttle: 0, speed: 1 });
    expect(run).toMatchObject({ rotation: 0, how: "stands", torque: 0 });
    expectNear(run.thrust, -0.5 * air.density * stoppedPropellerDrag(plant().propeller!), 1e-12);
  });

  it("that folds drags less than one that windmills, and does not turn", () => {
    const [folding, plain] = [true, false].map((each) => solve([plant({ propeller: { ...propellerOf(12, 6, "thin"), folding: each } })], { throttle: 0, speed: 20 }).runs[0]);
    expect(folding).toMatchObject({ how: "folded", rotation: 0, motorHeat: 0, packCurrent: 0 });
    expect(plain.how).toBe("turned");
    expect(folding.thrust).toBeLessThan(0);
    expect(folding.thrust).toBeGreaterThan(0.5 * plain.thrust);
  });

  it("turned by the flight it is the windmill of the drag account", () => {
    const one = plant();
    const { runs: [run] } = solve([one], { throttle: 0, speed: 20 });
    const windmill = windmillingPropeller(one.propeller!, { speed: 20, air, friction: windmillFriction(one.motor!) })!;
    expectNear(run.rotation, windmill.rotation, 1e-6);
    expectNear(run.thrust, -windmill.area * 0.5 * air.density * 400, 1e-6);
  });

  it("driven gives the air no more than its shaft does, and less than momentum allows", () => {
    for (const throttle of [0.3, 0.6, 1]) {
      for (const speed of [2, 8, 16, 24]) {
        const { runs: [run] } = solve([plant()], { throttle, speed });
        if (!(run.thrust > 0)) continue;
        const ideal = idealEfficiency(run.thrust, speed, (Math.PI * 0.3048 ** 2) / 4, air.density);
        expect((run.thrust * speed) / run.shaftPower).toBeLessThan(ideal);
        expect(run.how).toBe("driven");
      }
    }
  });

  it("with its shaft across the way meets still air; tilted, a part of it", () => {
    const pull = (thrustAxis: Powerplant["thrustAxis"], speed: number) => solve([plant({ thrustAxis })], { speed }).runs[0].thrust;
    expect(pull([0, 0, 1], 15)).toBe(pull([0, 0, 1], 0));
    expect(pull([1, 0, 0], 15)).toBe(pull([-1, 0, 0], 0));
    expectNear(pull([-0.8, 0, 0.6], 15), pull([-1, 0, 0], 12), 1e-9);
  });

  it("two on one pack share its sag in flight", () => {
    const pair = [plant({ path: "left" }), plant({ path: "right" })];
    const { runs, fed } = solve(pair, { speed: 12 });
    expectNear(runs[0].thrust, runs[1].thrust, 1e-9);
    expect(runs[0].thrust).toBeLessThan(solve([pair[0]], { speed: 12 }).runs[0].thrust);
    expectNear(fed.volts, fed.source.emf.nominal - fed.current * fed.source.resistance, 1e-8);
  });
});
