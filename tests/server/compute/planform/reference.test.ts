import { describe, expect, it } from "vitest";
import { referenceGeometry } from "../../../../server/compute/planform/reference-geometry";
import { surfaceGeometry } from "../../../../server/compute/planform/surface-geometry";
import { canardVolume, finVolume, tailVolume } from "../../../../server/compute/planform/volumes";
import { fuselage, mirrored, single, tapered, type Row } from "../airframes";

const gapped = (y: number, z = 0): readonly Row[] => [[0, y, z, 0.2], [0, 0.8, z, 0.2]];
const hull = fuselage([-0.3, 0, 0], [[0, 0.02, 0.02], [0.2, 0.1, 0.1], [0.9, 0.1, 0.1]]);

/** Sums of a few products: only the last bits may differ. */
const last = 12;

describe("the gap between the roots", () => {
  const area = (surfaces: Parameters<typeof referenceGeometry>[0], bodies = [hull]) => referenceGeometry(surfaces, bodies)!.area;

  it("counts where a fuselage reaches both roots", () => {
    const found = referenceGeometry([mirrored(gapped(0.05))], [hull])!;
    expect(found.area).toBeCloseTo(1.6 * 0.2, last);
    expect(found.gaps).toEqual([{ path: "main", carried: true }]);
  });
  it("does not without one, with one that is too narrow, too low, or elsewhere along the length", () => {
    expect(area([mirrored(gapped(0.05))], [])).toBeCloseTo(1.5 * 0.2, last);
    expect(area([mirrored(gapped(0.1))])).toBeCloseTo(1.4 * 0.2, last);
    expect(area([mirrored(gapped(0.05, 0.15))])).toBeCloseTo(1.5 * 0.2, last);
    expect(area([mirrored(gapped(0.05))], [fuselage([0.5, 0, 0], [[0, 0.1, 0.1], [1, 0.1, 0.1]])])).toBeCloseTo(1.5 * 0.2, last);
    expect(area([mirrored(gapped(0.05))], [{ ...hull, kind: "boom" }])).toBeCloseTo(1.5 * 0.2, last);
  });
  it("does not where a centre wing starts there, so that a twin is not counted twice", () => {
    const centre = mirrored([[0, 0, 0, 0.25], [0, 0.05, 0, 0.25]], { path: "centre" });
    expect(area([centre, mirrored(gapped(0.05), { path: "outer" })])).toBeCloseTo(0.1 * 0.25 + 1.5 * 0.2, last);
  });
  it("does, if the other wing is more than half a root chord higher, or behind", () => {
    const above = mirrored([[0, 0, 0.15, 0.2], [0, 0.8, 0.15, 0.2]], { path: "upper" });
    expect(area([above, mirrored(gapped(0.05), { path: "lower" })])).toBeCloseTo(2 * 1.6 * 0.2, last);
    const behind = mirrored([[0.4, 0, 0, 0.2], [0.4, 0.8, 0, 0.2]], { path: "rear" });
    expect(area([behind, mirrored(gapped(0.05), { path: "front" })])).toBeCloseTo(2 * 1.6 * 0.2, last);
  });
  it("is decided by hand", () => {
    expect(area([mirrored(gapped(0.05), { carryThrough: false })])).toBeCloseTo(1.5 * 0.2, last);
    expect(area([mirrored(gapped(0.3), { carryThrough: true })], [])).toBeCloseTo(1.6 * 0.2, last);
  });
  it("does not count what reaches over the plane twice", () => {
    expect(area([mirrored(gapped(-0.02))], [])).toBeCloseTo(1.6 * 0.2, last);
  });
});

describe("reference geometry", () => {
  it("leaves out tails, canards, fins and wings set aside", () => {
    const wing = tapered(1.6, 0.2, 0.2, 0);
    const others = [tapered(0.6, 0.2, 0.2, 0, { kind: "tailplane" }), tapered(0.6, 0.2, 0.2, 0, { kind: "canard" }),
      single([[1, 0, 0, 0.2], [1, 0, 0.2, 0.2]], { kind: "fin" }), tapered(3, 0.5, 0.5, 0, { path: "half", reference: false })];
    expect(referenceGeometry([wing, ...others], [])).toEqual(referenceGeometry([wing], []));
  });
  it("sums areas and takes the largest span of two wings", () => {
    const found = referenceGeometry([tapered(2, 0.2, 0.2, 0), mirrored([[0.4, 0, 0.1, 0.1], [0.4, 0.5, 0.1, 0.1]], { path: "low" })], [])!;
    expect(found.area).toBeCloseTo(0.4 + 0.1, last);
    expect(found.span).toBeCloseTo(2, last);
    expect(found.meanChord).toBeCloseTo((0.4 * 0.2 + 0.1 * 0.1) / 0.5, last);
    expect(found.meanChordX + found.meanChord / 4).toBeCloseTo((0.4 * 0.05 + 0.1 * 0.425) / 0.5, last);
  });
  it("has no plan area in an upright panel", () => {
    const winglets = mirrored([[0, 0, 0, 0.2], [0, 0.8, 0, 0.2], [0, 0.8, 0.15, 0.1]]);
    expect(referenceGeometry([winglets], [])!.area).toBeCloseTo(0.32, last);
    expect(surfaceGeometry(winglets)!.area).toBeCloseTo(0.32 + 2 * 0.15 * 0.15, last);
  });
  it("takes a wing that is not mirrored as it stands", () => {
    expect(referenceGeometry([single([[0, -0.4, 0, 0.2], [0, 0.6, 0, 0.2]])], [])!).toMatchObject({ span: 1, area: 0.2 });
  });
  it("is undefined without a wing or without area", () => {
    expect(referenceGeometry([], [])).toBeUndefined();
    expect(referenceGeometry([tapered(1, 0.2, 0.2, 0, { kind: "tailplane" })], [])).toBeUndefined();
    expect(referenceGeometry([tapered(1, 0, 0, 0)], [])).toBeUndefined();
    expect(referenceGeometry([tapered(0, 0.2, 0.2, 0)], [])).toBeUndefined();
    expect(referenceGeometry([mirrored([[0, 0, 0, 0.2], [0, 0, 1, 0.2]])], [])).toBeUndefined();
    expect(surfaceGeometry(tapered(1, 0, 0, 0))).toBeUndefined();
  });
});

describe("volumes", () => {
  const wing = tapered(1.6, 0.2, 0.2, 0);
  const reference = referenceGeometry([wing], [])!;
  const tail = mirrored([[0.8, 0, 0, 0.1], [0.8, 0.2, 0, 0.1]], { kind: "tailplane" });
  const arm = 0.8 + 0.025 - 0.05;

  it("tail and canard, quarter mean chord to quarter mean chord", () => {
    expect(tailVolume([wing, tail], [], reference)).toBeCloseTo((0.04 * arm) / (0.32 * 0.2), last);
    const canard = mirrored([[-0.5, 0, 0, 0.1], [-0.5, 0.2, 0, 0.1]], { kind: "canard" });
    expect(canardVolume([wing, canard], [], reference)).toBeCloseTo((0.04 * (0.5 + 0.05 - 0.025)) / (0.32 * 0.2), last);
  });
  it("fin, winglets and V-tail in yaw", () => {
    const fin = single([[0.8, 0, 0, 0.1], [0.8, 0, 0.15, 0.1]], { kind: "fin" });
    expect(finVolume([wing, fin], reference)).toBeCloseTo((0.015 * arm) / (0.32 * 1.6), last);
    const winglets = mirrored([[0, 0, 0, 0.2], [0, 0.8, 0, 0.2], [0.1, 0.8, 0.1, 0.1]]);
    // Area-weighted quarter-chord x of a winglet whose chord and quarter-chord line run straight.
    const quarter = (0.1 * (2 * 0.2 * 0.05 + 0.2 * 0.125 + 0.1 * 0.05 + 2 * 0.1 * 0.125)) / 6 / 0.015;
    expect(finVolume([winglets], reference)).toBeCloseTo((2 * 0.015 * (quarter - 0.05)) / (0.32 * 1.6), last);
    const angle = (40 * Math.PI) / 180;
    const vee = mirrored([[0.8, 0, 0, 0.1], [0.8, 0.2 * Math.cos(angle), 0.2 * Math.sin(angle), 0.1]], { kind: "tailplane" });
    expect(finVolume([wing, vee], reference)).toBeCloseTo((0.04 * Math.sin(angle) ** 2 * arm) / (0.32 * 1.6), last);
    expect(tailVolume([wing, vee], [], reference)).toBeCloseTo((0.04 * Math.cos(angle) ** 2 * arm) / (0.32 * 0.2), last);
  });
  it("are undefined, not zero, where there is nothing to count", () => {
    expect(tailVolume([wing], [], reference)).toBeUndefined();
    expect(canardVolume([wing, tail], [], reference)).toBeUndefined();
    const polyhedral = mirrored([[0, 0, 0, 0.2], [0, 0.5, 0, 0.2], [0, 0.8, 0.06, 0.2]]);
    expect(finVolume([polyhedral, tail], reference)).toBeUndefined();
  });
});
