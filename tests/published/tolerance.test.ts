import { describe, it } from "vitest";
import { halfWidth } from "../../grammar/units/quantity";
import { massFigures } from "../../server/compute/mass/figures";
import { propagate } from "../../server/compute/tolerance/propagate";
import { q, qLoad, qParts } from "../server/compute/mass/quantities";
import { expectNear } from "./near";

// JCGM 100:2008, eq. (10), evaluated for the case; a Monte Carlo run of 2e6 draws gave 2.2002 mm for the first.
// 0.5 %: the published figures' own rounding and the difference to Monte Carlo.
const share = 0.005;

describe("uncertainty of a CG from four weighed items", () => {
  const items = [[0.3, 0.15, 0.002, 0.005], [0.45, 0.33, 0.005, 0.002], [0.7, 0.42, 0.01, 0.004], [0.55, 0.5, 0.006, 0.005]] as const;
  const design = qParts({ loads: items.map(([m, x, dm, dx], i) => qLoad(`item${i}`, m, x, dm, dx)) });
  const found = massFigures(design);
  if (!found) throw new Error("nothing weighs anything");

  it("CG 381.250 mm, u 2.2023 mm; u of the mass 12.845 g", () => {
    expectNear(found.cg[0].value, 0.38125, 1e-9);
    expectNear(halfWidth(found.cg[0]), 2.2023e-3, share);
    expectNear(halfWidth(found.mass), 12.845e-3, share);
  });

  it.each([[0, 0.7848e-3], [1, 0.4679e-3], [2, 1.4133e-3], [3, 1.4204e-3]])("item %s adds %s m", (i, expected) => {
    const spread = found.cg[0].spread;
    expectNear(Math.hypot(spread?.get(`item${i}.weight`) ?? 0, spread?.get(`item${i}.x`) ?? 0), expected, share);
  });

  it("limits added linearly: 4.8844 mm", () => {
    expectNear([...(found.cg[0].spread ?? []).values()].reduce((sum, change) => sum + Math.abs(change), 0), 4.8844e-3, share);
  });
});

describe("weighing on three scales, nose wheel 350 mm ahead of mains at 430 mm", () => {
  const inputs = {
    nose: q(0.24, "mass", { nose: 0.002 }),
    mains: q(1.86, "mass", { mains: 0.002 }),
    wheelbase: q(0.35, "length", { wheelbase: 0.001 }),
    at: q(0.43, "length", { at: 0.001 }),
  };

  it("CG 390.000 mm, u 1.0496 mm, from x_main − F·L/W", () => {
    const { cg } = propagate(inputs, (w) => ({ cg: w.at - (w.nose * w.wheelbase) / (w.nose + w.mains) }));
    if (!cg) throw new Error("no CG");
    expectNear(cg.value, 0.39, 1e-9);
    expectNear(Math.hypot(...cg.spread.values()), 1.0496e-3, share);
    for (const [variable, expected] of [["at", 1e-3], ["nose", 0.295e-3], ["mains", 0.038e-3], ["wheelbase", 0.114e-3]] as const) {
      // Printed to the micrometre: half of that.
      expectNear(Math.abs(cg.spread.get(variable) ?? 0), expected, 0.5e-6 / expected);
    }
  });

  it("the same as loads at the wheels, the place of the mains shared by both", () => {
    const nose = q(0.08, "length", { at: 0.001, wheelbase: -0.001 });
    const zero = q(0, "length");
    const found = massFigures(qParts({
      loads: [
        { path: "nose", kind: "item", weight: inputs.nose, at: [nose, zero, zero] },
        { path: "mains", kind: "item", weight: inputs.mains, at: [inputs.at, zero, zero] },
      ],
    }));
    if (!found) throw new Error("nothing weighs anything");
    expectNear(found.cg[0].value, 0.39, 1e-9);
    expectNear(halfWidth(found.cg[0]), 1.0496e-3, share);
  });
});
