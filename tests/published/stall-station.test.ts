import { describe, expect, it } from "vitest";
import { airAt } from "../../server/compute/aircraft/air-at";
import { liftLimits } from "../../server/compute/aircraft/lift-limits";
import { solveLattice } from "../../server/compute/lattice/solve-lattice";
import { tapered } from "../server/compute/airframes";
import { air, basisOf, sectionsLike } from "../server/compute/aircraft/planes";
import { liftingLine } from "./lifting-line";
import { expectNear } from "./near";

/** Quarter chord unswept, mean geometric chord 1. */
const wingOf = (aspectRatio: number, taper: number, washout = 0) => {
  const root = 2 / (1 + taper);
  const wing = tapered(aspectRatio, root, root * taper, (root * (1 - taper)) / 4);
  return washout === 0 ? wing : {
    ...wing, halves: wing.halves.map((half) => ({ ...half, panels: half.panels.map((p) => ({ ...p, outer: { ...p.outer, twist: -washout } })) })),
  };
};

describe("how lift spreads over the span: local over mean lift coefficient", () => {
  // Lifting line of H. Glauert, Elements of Aerofoil and Airscrew Theory, ch. XI; 1 %, 2 % in the kink of the tapered root.
  it.each([
    [8, 1, [1.1255, 1.0962, 0.9969, 0.7595]],
    [8, 0.5, [0.9625, 1.0539, 1.0419, 0.8787]],
  ])("lifting line, aspect ratio %d, taper %d", (aspectRatio, taper, values) => {
    const line = liftingLine(aspectRatio, taper, () => 1);
    [0, 0.4, 0.7, 0.9].forEach((share, i) => expectNear(line.local(share) / line.lift, values[i], share === 0 && taper < 1 ? 0.02 : 0.01));
  });

  // At aspect ratio 8 a lifting surface lifts less at the tips than a lifting line has it (span efficiency 0.972 against 0.937 for the
  // untapered wing, both published): the two must meet as chord over span goes to nothing.
  it.each([[80, 1], [80, 0.5]])("the lattice comes to the lifting line on a long wing: aspect ratio %d, taper %d", (aspectRatio, taper) => {
    const line = liftingLine(aspectRatio, taper, () => 1, 240);
    const { strips, liftSlope } = solveLattice([wingOf(aspectRatio, taper)])!;
    for (const { side, y, chord, circulation } of strips) {
      const share = (2 * y) / aspectRatio;
      // The places of the source end at 0.9; within a few chords of the tip a lifting line does not hold, however long the wing.
      if (side !== "right" || share < 0.05 || share > 0.9) continue;
      expectNear((2 * circulation.slope * aspectRatio) / (chord * liftSlope), line.local(share) / line.lift, 0.01);
    }
  });
});

describe("where a wing of one section stalls first", () => {
  const station = (taper: number, washout = 0) => {
    const basis = basisOf([wingOf(7, taper, washout)]);
    return liftLimits(basis, airAt(basis, sectionsLike(), { speed: 10, air })!, { cgX: 0 })[0].station;
  };
  // H. A. Soulé, R. F. Anderson, Design Charts Relating to the Stalling of Tapered Wings, NACA Report 703, 1940 (from memory, high): an
  // untapered wing stalls at the root, a strongly tapered one outboard; washout brings the stall inward.
  it("an untapered one at the root", () => expect(station(1)).toBeLessThan(0.1));
  it("one of taper 0.3 outboard of the middle", () => {
    expect(station(0.3)).toBeGreaterThan(0.5);
    expect(station(0.3)).toBeLessThan(0.85);
  });
  it("the more tapered the farther out; with washout farther in", () => {
    expect(station(0.6)).toBeGreaterThan(station(1));
    expect(station(0.6)).toBeLessThan(station(0.3));
    expect(station(0.3, 0.07)).toBeLessThan(station(0.3));
  });
});
