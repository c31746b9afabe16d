import fc from "fast-check";
import { expect, it } from "vitest";
import type { Powerplant, Source } from "../../../../server/model/design/power";
import { idealEfficiency, idealStaticPower } from "../../../../server/compute/propeller/momentum";
import type { PlantRun } from "../../../../server/compute/powertrain/plant-run";
import { runAt } from "../../../../server/compute/powertrain/run-at";
import { anyAir, anyPropeller, anyStations } from "../propeller/arbitrary";
import { number, plant } from "./plants";

/** Few in a test run, 100,000 where SPARWRIGHT_RANDOM_POWERPLANTS says so. */
const count = Number(process.env.SPARWRIGHT_RANDOM_POWERPLANTS ?? 4_000);

/** Mostly sound, sometimes nothing that can be built, over seven decades. */
const decades = (low: number, high: number) => number(Math.log(low), Math.log(high)).map(Math.exp);
const broken = fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY);
const often = <T>(sound: fc.Arbitrary<T>, odd: fc.Arbitrary<T>) => fc.oneof({ weight: 40, arbitrary: sound }, { weight: 1, arbitrary: odd });

const anyMotor = fc.record({
  kv: often(decades(0.5, 2000), broken), resistance: often(decades(1e-3, 10), broken), noLoadCurrent: often(decades(1e-2, 20), broken),
  gearRatio: often(decades(0.2, 20), broken),
});

const anyPack = fc.record({
  path: fc.constant("pack"), cells: often(fc.integer({ min: 1, max: 14 }), fc.constant(0)), parallel: fc.constant(1),
  chemistry: fc.constantFrom("lipo", "lihv", "liion", "life", "nimh"), capacity: often(decades(100, 1e5), broken),
  resistance: fc.option(decades(1e-4, 1), { nil: undefined }), usable: number(0.1, 1),
}) as fc.Arbitrary<Source["packs"][number]>;

const anyShaft = fc.record({ down: number(-1.6, 1.6), right: number(-1.6, 1.6) }).map(({ down, right }) =>
  [-Math.cos(down) * Math.cos(right), Math.cos(down) * Math.sin(right), -Math.sin(down)] as const);

const anyPowerplant: fc.Arbitrary<Powerplant> = fc.record({
  motor: often(anyMotor, fc.constant(undefined)),
  propeller: often(fc.oneof(anyPropeller, anyStations), fc.constant(undefined)),
  diameter: often(fc.constant(undefined), broken), pitch: often(fc.constant(undefined), broken),
  controller: fc.option(fc.record({ path: fc.constant("esc"), resistance: fc.option(decades(1e-4, 0.1), { nil: undefined }), maxCurrent: fc.option(decades(1, 300), { nil: undefined }) }), { nil: undefined }),
  thrustAxis: anyShaft,
}).map(({ motor, propeller, diameter, pitch, controller, thrustAxis }) => plant({
  motor, controller, thrustAxis,
  propeller: propeller && { ...propeller, diameter: diameter ?? propeller.diameter, pitch: pitch ?? propeller.pitch },
}));

const anyCase = fc.record({
  powerplants: fc.array(anyPowerplant, { minLength: 1, maxLength: 2 }).map((all) => all.map((one, i) => ({ ...one, path: `p${i}` }))),
  pack: anyPack, throttle: number(0, 1), speed: fc.oneof(fc.constant(0), number(0, 70)), charge: number(0, 1), air: anyAir,
});

it(`${count} powerplants that nobody would build run, or say why not`, async () => {
  const told = { runs: 0, missing: new Map<string, number>(), open: 0, time: 0 };
  // Pieces of a hundred, so that the runner is not starved.
  for (let done = 0; done < count;) {
    const cases = fc.sample(anyCase, { seed: 1_912 + done, numRuns: 100 });
    for (const each of cases) {
      done += each.powerplants.length;
      judge(each, told);
    }
    await new Promise((resolve) => void setImmediate(resolve));
  }
  console.log(`${told.runs} ran, ${(told.time / told.runs).toFixed(2)} ms each with their maps; energy open by ${told.open.toExponential(1)} at most; ` +
    `the others lack ${[...told.missing].map(([what, times]) => `${what} ${times}`).join(", ")}`);
  expect(told.runs).toBeGreaterThan(0.5 * count);
  expect(told.open).toBeLessThan(1e-3); // asked
}, 30 * 60_000);

type Case = typeof anyCase extends fc.Arbitrary<infer T> ? T : never;

function judge({ powerplants, pack, throttle, speed, charge, air }: Case, told: { runs: number; missing: Map<string, number>; open: number; time: number }): void {
  const start = performance.now();
  const result = runAt({ powerplants, sources: [{ path: "pack", wired: "single", packs: [pack] }], air, state: charge, throttle, speed });
  told.time += performance.now() - start;
  const context = JSON.stringify({ powerplants, pack, throttle, speed, charge, air });
  result.powerplants.forEach((one, i) => {
    if ("missing" in one) return void told.missing.set(one.missing, (told.missing.get(one.missing) ?? 0) + 1);
    told.runs++;
    const along = Math.max(0, -powerplants[i].thrustAxis[0] * speed);
    for (const value of [...Object.values(one), ...Object.values(one.propeller ?? {})]) {
      if (typeof value === "number") expect(Number.isFinite(value), context).toBe(true);
    }
    momentum(one, along, powerplants[i].propeller?.diameter ?? Number.NaN, air.density, context);
  });
  const [fed] = result.sources;
  if ("missing" in fed) return;
  const runs = result.powerplants.filter((one): one is PlantRun => "thrust" in one);
  const flow = runs.reduce((sum, run) => sum + Math.abs(run.shaftPower) + run.motorHeat, fed.heat);
  const given = fed.current * (fed.volts + fed.current * fed.source.resistance);
  const spent = runs.reduce((sum, run) => sum + (run.propeller?.power ?? 0) + run.motorHeat + run.controllerLoss + run.leadLoss, fed.heat);
  if (flow > 1e-6) told.open = Math.max(told.open, Math.abs(given - spent) / flow);
}

/** What momentum allows; a windmill takes no more than what brakes times the speed. */
function momentum({ propeller: load, thrust }: PlantRun, speed: number, diameter: number, density: number, context: string): void {
  if (!load) return void expect(thrust, context).toBeLessThanOrEqual(0);
  const area = (Math.PI * diameter ** 2) / 4;
  if (load.thrust > 0 && load.power > 0) {
    // At a creep, squares of the speed vanish beside the thrust.
    if (speed < 1e-3) expect(load.power, context).toBeGreaterThan(0.999 * idealStaticPower(load.thrust, area, density));
    else expect((load.thrust * speed) / load.power, context).toBeLessThan(1.001 * idealEfficiency(load.thrust, speed, area, density));
  }
  // The map's half a percent of what they are standing still.
  const still = density * (diameter * load.tipSpeed) ** 2;
  if (load.power < 0) expect(-load.power, context).toBeLessThan(Math.max(0, -load.thrust * speed) + 1e-4 * still * Math.hypot(load.tipSpeed, speed));
}
