import { describe, expect, it } from "vitest";
import { cellVolts } from "../../server/compute/battery/cell";
import { discharge, type Discharge, type Draw } from "../../server/compute/battery/discharge";
import type { Chemistry, Pack, Source } from "../../server/model/design/power";
import { expectNear } from "./near";

const source = (over: Partial<Pack> = {}): Source =>
  ({ path: "pack", wired: "single", packs: [{ path: "pack", cells: 3, parallel: 1, chemistry: "lipo", capacity: 2.2 * 3600, usable: 0.8, ...over }] });
const run = (draw: Draw, over: Partial<Pack> = {}) => discharge({ source: source(over), draw }) as Discharge;
const chemistries: readonly Chemistry[] = ["lipo", "lihv", "liion", "life", "nimh"];

describe.each(chemistries)("%s", (chemistry) => {
  it("at a steady current lasts as long as its usable charge", () => {
    const { time, taken, points } = run({ current: 5 }, { chemistry });
    expectNear(time, (0.8 * 2.2 * 3600) / 5, 1e-9);
    expectNear(taken, 0.8 * 2.2 * 3600, 1e-9);
    expectNear(points[points.length - 1].charge, 0.2, 1e-9);
  });

  it("at a steady power gives just that, and no energy is lost from the sum", () => {
    const { time, energy, heat } = run({ power: 40 }, { chemistry });
    expectNear(energy, 40 * time, 1e-9);
    // Its own table's straight pieces, summed: the mean of resting volts over the charge taken.
    const rest = Array.from({ length: 80 }, (_, i) => 3 * cellVolts(chemistry, 1 - (i + 0.5) / 100)).reduce((a, b) => a + b) / 80;
    expectNear(energy + heat, rest * 0.8 * 2.2 * 3600, 1e-6);
  });

  it("its volts fall and its current grows to the end", () => {
    const { points } = run({ power: 40 }, { chemistry });
    for (let i = 1; i < points.length; i++) {
      expect(points[i].volts).toBeLessThan(points[i - 1].volts);
      expect(points[i].current).toBeGreaterThan(points[i - 1].current);
      expect(points[i].time).toBeGreaterThan(points[i - 1].time);
    }
  });
});

// L. W. Traub, J. Aircraft 48(2), 2011, without loss by rate: 2.2 Ah at 11.1 V and 60 W last 24.42 min; here at its own mean volts.
it("lasts as long as charge × mean volts over power", () => {
  const { time } = run({ power: 60 }, { usable: 1, resistance: 1e-6 });
  const mean = Array.from({ length: 100 }, (_, i) => 3 * cellVolts("lipo", (i + 0.5) / 100)).reduce((a, b) => a + b) / 100;
  expectNear(time, (24.42 * 60 * mean) / 11.1, 2e-3); // four printed digits, 2e-4; two midpoint rules of different steps over the knee at the end
});

it("resistance costs time: by what it burns", () => {
  const [good, poor] = [0.01, 0.1].map((resistance) => run({ power: 60 }, { resistance }));
  expect(poor.time).toBeLessThan(good.time);
  expectNear(poor.time * 60 + poor.heat, good.time * 60 + good.heat, 1e-9);
});

it("says when the packs can't give it: more than E²/4R at the terminals, or more current than they have volts for", () => {
  const most = (3 * 3.73) ** 2 / (4 * 0.1);
  expect(run({ power: 0.99 * most }, { resistance: 0.1 }).weak).toBeUndefined();
  const weak = run({ power: 1.05 * most }, { resistance: 0.1 });
  expect(weak.weak).toBe(true);
  expect(weak.points[weak.points.length - 1].charge).toBeGreaterThan(0.2);
  expect(run({ current: 200 }, { resistance: 0.1 }).weak).toBe(true);
});

it("begins and ends where it is told, and gives nothing past that", () => {
  const half = discharge({ source: source(), draw: { current: 2.2 }, from: 0.6, to: 0.5 }) as Discharge;
  expectNear(half.time, 360, 1e-9);
  expect(discharge({ source: source(), draw: { current: 2.2 }, from: 0.1 })).toMatchObject({ time: 0, energy: 0 });
  expect(discharge({ source: source({ cells: 0 }), draw: { current: 1 } })).toEqual({ missing: "cells" });
});
