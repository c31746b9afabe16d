import { describe, expect, it } from "vitest";
import { cellVolts, usualResistance } from "../../server/compute/battery/cell";
import { emfOf, equivalentSource, packCurrents, type EquivalentSource } from "../../server/compute/battery/source";
import type { Pack, Source } from "../../server/model/design/power";
import { expectNear } from "./near";

const ampereHours = 3600;
const pack = (over: Partial<Pack> = {}): Pack =>
  ({ path: "pack", cells: 3, parallel: 1, chemistry: "lipo", capacity: 2.2 * ampereHours, usable: 0.8, ...over });
const solved = (wired: Source["wired"], ...packs: Pack[]) => equivalentSource({ path: "power", wired, packs }) as EquivalentSource;

describe("resting voltage of a lithium-polymer cell", () => {
  // The table in wide use in hobby electronics, own transcription: common practice, no paper behind it.
  it.each([[1, 4.2], [0.9, 4.11], [0.8, 4.02], [0.7, 3.95], [0.6, 3.87], [0.5, 3.84], [0.4, 3.8], [0.3, 3.77], [0.2, 3.73], [0.1, 3.69], [0, 3.27]])(
    "at a charge of %d: %d V", (charge, volts) => expect(cellVolts("lipo", charge)).toBeCloseTo(volts, 9));

  // M. Chen and G. A. Rincon-Mora, IEEE Trans. Energy Conversion 21(2), 2006, an 850 mAh cell. The two differ by up to 0.10 V.
  it("is within 0.1 V of the published formula above 30 % charge", () => {
    for (let s = 0.3; s <= 1; s += 0.05) {
      const published = -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s ** 2 + 0.3201 * s ** 3;
      expect(Math.abs(cellVolts("lipo", s) - published)).toBeLessThan(0.1);
    }
  });

  // Labels say 3.7, 3.8, 3.6, 3.3 and 1.2 V: the mean of a discharge under load, so rest at half charge lies above it.
  it("is that of half a charge when nominal, and the charger's when full: common practice, no source", () => {
    const rest = ["lipo", "lihv", "liion", "life", "nimh"].map((c) => cellVolts(c as Pack["chemistry"], "nominal"));
    expect(rest).toEqual([3.84, 3.87, 3.69, 3.3, 1.28]);
    [3.7, 3.8, 3.6, 3.3, 1.2].forEach((label, i) => expect(rest[i]).toBeGreaterThanOrEqual(label));
    expect(cellVolts("lipo", "full")).toBe(4.2);
    expect(cellVolts("liion", "full")).toBe(4.2);
  });
});

// 12 mohm Ah is a guess from experience (range 8 to 25). Measured: 6.6 to 8.6 mohm a cell over three thrust-stand packs, leads
// and spent charge included; good cells of high capacity when new 1 to 4 mohm.
describe("usual resistance", () => {
  it("of a 5 Ah lithium-polymer cell is 2.4 mohm", () => expectNear(usualResistance("lipo", 1, 5 * ampereHours), 0.0024, 1e-12));
  it("of a 3 Ah lithium-ion cell is in the 15 to 40 mohm usual for its size", () => {
    expect(usualResistance("liion", 1, 3 * ampereHours)).toBeGreaterThan(0.015);
    expect(usualResistance("liion", 1, 3 * ampereHours)).toBeLessThan(0.04);
  });
  it("goes by the capacity on the label: cells in parallel are in it", () => {
    expectNear(solved("single", pack({ cells: 4, capacity: 8 * ampereHours, parallel: 2 })).resistance, (4 * 0.012) / 8, 1e-12);
  });
});

describe("packs together", () => {
  it("add up in series", () => {
    const both = solved("series", pack({ cells: 3, resistance: 0.02, cRating: 30 }), pack({ cells: 2, resistance: 0.015, capacity: 2 * ampereHours, cRating: 20 }));
    expectNear(both.emf.full, 5 * 4.2, 1e-12);
    expectNear(both.emf.nominal, 5 * 3.84, 1e-12);
    expectNear(both.resistance, 0.035, 1e-12);
    expectNear(both.capacity, 2 * ampereHours, 1e-12);
    expectNear(both.usableCharge, 1.6 * ampereHours, 1e-12);
    expectNear(both.maxCurrent!, 40, 1e-12); // 20 × 2 Ah, the weaker
  });

  it("like ones in parallel halve the resistance and double charge and current", () => {
    const both = solved("parallel", pack({ resistance: 0.02, cRating: 30 }), pack({ resistance: 0.02, cRating: 30 }));
    expectNear(both.emf.full, 12.6, 1e-12);
    expectNear(both.resistance, 0.01, 1e-12);
    expectNear(both.capacity, 4.4 * ampereHours, 1e-12);
    expectNear(both.maxCurrent!, 132, 1e-12);
  });

  // Thévenin by hand: 11.52 V behind 20 mohm beside 12.8 V (ten cells of another kind) behind 60 mohm: 15 mohm together.
  it("unlike ones in parallel share by Thévenin, and feed each other at rest", () => {
    const wired = [pack({ resistance: 0.02 }), pack({ chemistry: "nimh", cells: 10, resistance: 0.06 })] as const;
    const both = solved("parallel", ...wired);
    expectNear(both.emf.nominal, (11.52 / 0.02 + 12.8 / 0.06) / (1 / 0.02 + 1 / 0.06), 1e-12);
    expectNear(both.resistance, 0.015, 1e-12);
    const atRest = packCurrents("parallel", both.packs, "nominal", 0);
    expectNear(atRest[1], 1.28 / 0.08, 1e-9);
    expectNear(atRest[0], -1.28 / 0.08, 1e-9);
    const loaded = packCurrents("parallel", both.packs, "nominal", 40);
    expectNear(loaded[0] + loaded[1], 40, 1e-9);
    expectNear(11.52 - loaded[0] * 0.02, 12.8 - loaded[1] * 0.06, 1e-9); // one terminal voltage
    expectNear(emfOf("parallel", both.packs, "nominal") - 40 * both.resistance, 11.52 - loaded[0] * 0.02, 1e-9);
  });

  it("at the greatest current no pack is over its own, and one is at it", () => {
    const both = solved("parallel", pack({ resistance: 0.02, cRating: 20 }), pack({ resistance: 0.05, cRating: 30 }));
    const shares = packCurrents("parallel", both.packs, "full", both.maxCurrent!);
    expectNear(Math.max(shares[0] / 44, shares[1] / 66), 1, 1e-9);
  });

  it("without a rating have no greatest current", () => {
    expect(solved("series", pack({ cRating: 30 }), pack()).maxCurrent).toBeUndefined();
  });

  it("say what they lack", () => {
    expect(equivalentSource({ path: "p", wired: "single", packs: [] })).toEqual({ missing: "packs" });
    expect(equivalentSource({ path: "p", wired: "single", packs: [pack({ cells: 0 })] })).toEqual({ missing: "cells" });
    expect(equivalentSource({ path: "p", wired: "single", packs: [pack({ capacity: Number.NaN })] })).toEqual({ missing: "capacity" });
  });
});
