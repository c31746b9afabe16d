import { describe, expect, it } from "vitest";
import { cellVolts } from "../../server/compute/battery/cell";
import { drain, storeOf, type Store } from "../../server/compute/battery/store";
import type { Chemistry, Pack } from "../../server/model/design/power";
import { expectNear } from "./near";

const pack = (over: Partial<Pack> = {}) =>
  storeOf({ path: "pack", wired: "single", packs: [{ path: "pack", cells: 3, parallel: 1, chemistry: "lipo", capacity: 2.2 * 3600, usable: 0.8, ...over }] });
const run = (power: number, over: Partial<Pack> = {}) => drain(pack(over) as Store, power, Infinity);
const chemistries: readonly Chemistry[] = ["lipo", "lihv", "liion", "life", "nimh"];

describe.each(chemistries)("%s", (chemistry) => {
  it("gives its usable charge, and no energy is lost from the sum", () => {
    const { time, taken, charge, heat } = run(40, { chemistry });
    expectNear(taken, 0.8 * 2.2 * 3600, 1e-9);
    expectNear(charge, 0.2, 1e-9);
    // Its own table's straight pieces, summed: the mean of resting volts over the charge taken.
    const rest = Array.from({ length: 80 }, (_, i) => 3 * cellVolts(chemistry, 1 - (i + 0.5) / 100)).reduce((a, b) => a + b) / 80;
    expectNear(40 * time + heat, rest * 0.8 * 2.2 * 3600, 1e-6);
  });

  it("its volts fall to the end", () => {
    const store = pack({ chemistry }) as Store;
    const whole = run(40, { chemistry }).time;
    const volts = [0.2, 0.4, 0.6, 0.8, 1].map((part) => drain(store, 40, part * whole).lowestVolts);
    for (let i = 1; i < volts.length; i++) expect(volts[i]).toBeLessThan(volts[i - 1]);
  });
});

// L. W. Traub, J. Aircraft 48(2), 2011, without loss by rate: 2.2 Ah at 11.1 V and 60 W last 24.42 min; here at its own mean volts.
it("lasts as long as charge × mean volts over power", () => {
  const { time } = run(60, { usable: 1, resistance: 1e-6 });
  const mean = Array.from({ length: 100 }, (_, i) => 3 * cellVolts("lipo", (i + 0.5) / 100)).reduce((a, b) => a + b) / 100;
  expectNear(time, (24.42 * 60 * mean) / 11.1, 2e-3); // four printed digits, 2e-4; two midpoint rules of different steps over the knee at the end
});

it("resistance costs time: by what it burns", () => {
  const [good, poor] = [0.01, 0.1].map((resistance) => run(60, { resistance }));
  expect(poor.time).toBeLessThan(good.time);
  expectNear(poor.time * 60 + poor.heat, good.time * 60 + good.heat, 1e-9);
});

it("says when the pack can't give it: more than E²/4R at the terminals", () => {
  const most = (3 * 3.73) ** 2 / (4 * 0.1);
  expect(run(0.99 * most, { resistance: 0.1 }).ended).toBe("charge");
  const weak = run(1.05 * most, { resistance: 0.1 });
  expect(weak.ended).toBe("power");
  expect(weak.charge).toBeGreaterThan(0.2);
});

it("begins and ends where it is told, and gives nothing past that", () => {
  const store = pack() as Store;
  const whole = drain(store, 20, Infinity);
  const half = drain(store, 20, Infinity, 0.6, 0.5);
  expectNear(half.taken, 0.1 * 2.2 * 3600, 1e-9);
  expect(half.time).toBeLessThan(whole.time);
  expect(drain(store, 20, Infinity, 0.1)).toMatchObject({ time: 0, taken: 0, ended: "charge" });
  expect(pack({ cells: 0 })).toEqual({ missing: "cells" });
});
