import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blended } from "../../../../server/compute/section-air/blended";
import { flapped } from "../../../../server/compute/section-air/flapped";
import { PolarShelf, type PolarLookup } from "../../../../server/compute/section-air/polar-shelf";
import { reynoldsGrid } from "../../../../server/compute/section-air/reynolds-grid";
import type { SectionAir } from "../../../../server/compute/section-air/section-air";
import { sectionsAir } from "../../../../server/compute/section-air/sections-air";
import { upsideDown } from "../../../../server/compute/section-air/upside-down";
import type { Section } from "../../../../server/model/design/geometry";
import { madeUp, madeUpPolars } from "./made-up";

const cambered: Section = { shape: { type: "naca", digits: "2412" } };
const symmetric: Section = { shape: { type: "naca", digits: "0009" } };
const plate: Section = { shape: { type: "flat", thickness: 0.03 } };
const table: Section = {
  shape: plate.shape,
  polar: { runs: [1e5, 3e5].map((reynolds) => ({ reynolds, points: madeUp(reynolds, { drag: 3 / Math.sqrt(reynolds) }).points })) },
};
const kinds: readonly (readonly [string, Section])[] = [
  ["cambered", cambered], ["symmetric", symmetric], ["flat plate", plate], ["measured", table],
  ["with a lift limit written", { ...cambered, liftMax: 1.5 }],
];

const reynoldsNumbers = fc.double({ min: Math.log(2e4), max: Math.log(5e6), noNaN: true }).map(Math.exp);
const lifts = fc.double({ min: -3, max: 3, noNaN: true });
const seeds = fc.integer({ min: 1, max: 1000 });

describe.each(kinds)("a section that is %s, with any polars", (_, section) => {
  it("has finite numbers, drag, and limits in order", () => {
    fc.assert(fc.property(seeds, reynoldsNumbers, lifts, (seed, reynolds, lift) => {
      const air = sectionsAir(madeUpPolars(0.5, seed))(section, reynolds)!;
      const { zeroLiftAngle, liftSlope, moment, liftMax, liftMin } = air;
      expect([zeroLiftAngle, liftSlope, moment, liftMax, liftMin, air.reynolds].every(Number.isFinite)).toBe(true);
      expect(liftMin).toBeLessThan(0);
      expect(liftMin).toBeLessThan(liftMax);
      expect(air.drag(lift)).toBeGreaterThan(0);
      expect(air.drag(lift)).toBeLessThan(20);
      expect(air.drag(liftMax + 0.3)).toBeGreaterThan(air.drag(liftMax));
      expect(air.drag(liftMin - 0.3)).toBeGreaterThan(air.drag(liftMin));
    }));
  });

  // Neighbours in the grid differ by up to 0.3, about as much as computed ones do, and lie 1.3 to 2 times apart: 1 % in Reynolds
  // number is at most a twenty-ninth of that. Lifts stay within both limits: past one drag is steep in lift.
  it("is continuous in Reynolds number", () => {
    fc.assert(fc.property(seeds, reynoldsNumbers, fc.double({ min: -1, max: 1, noNaN: true }), (seed, reynolds, share) => {
      const airs = sectionsAir(madeUpPolars(0.3, seed));
      const [a, b] = [airs(section, reynolds)!, airs(section, reynolds * 1.01)!];
      const lift = share > 0 ? share * Math.min(a.liftMax, b.liftMax) : -share * Math.max(a.liftMin, b.liftMin);
      expect(Math.abs(b.drag(lift) / a.drag(lift) - 1)).toBeLessThan(0.05);
      expect(Math.abs(b.liftMax / a.liftMax - 1)).toBeLessThan(0.05);
      expect(Math.abs(b.liftMin / a.liftMin - 1)).toBeLessThan(0.05);
      expect(Math.abs(b.zeroLiftAngle - a.zeroLiftAngle)).toBeLessThan(0.005);
      expect(Math.abs(b.liftSlope / a.liftSlope - 1)).toBeLessThan(0.05);
    }));
  });

  // Steepest is the made-up rise past the limit, 0.2 and twice the excess: 4 at most, times 1e-5; at the seam one polar goes over into
  // another, ten times or so apart in drag, within 0.1.
  it("is continuous in lift", () => {
    fc.assert(fc.property(seeds, reynoldsNumbers, lifts, (seed, reynolds, lift) => {
      const air = sectionsAir(madeUpPolars(0.5, seed))(section, reynolds)!;
      expect(Math.abs(air.drag(lift + 1e-5) - air.drag(lift))).toBeLessThan(1e-4);
    }));
  });
});

describe("between the grid", () => {
  const airs = sectionsAir(madeUpPolars(0.3));
  it("is the polar itself at a Reynolds number of the grid, and at the ends beyond", () => {
    const polar = madeUpPolars(0.3)(cambered.shape, 100e3);
    expect(airs(cambered, 100e3)).toMatchObject({ reynolds: 100e3, liftMax: (polar as { liftMax: number }).liftMax, origin: "computed" });
    expect(airs(cambered, 1e3)!.liftMax).toBe(airs(cambered, 40e3)!.liftMax);
    expect(airs(cambered, 9e6)!.reynolds).toBe(3e6);
  });

  it("goes linearly in log Re for limits, by powers for drag", () => {
    const [a, b, middle] = [100e3, 150e3, Math.sqrt(100e3 * 150e3)].map((reynolds) => airs(cambered, reynolds)!);
    expect(middle.liftMax).toBeCloseTo((a.liftMax + b.liftMax) / 2, 12);
    expect(middle.drag(0)).toBeCloseTo(Math.sqrt(a.drag(0) * b.drag(0)), 12);
    expect(middle.reynolds).toBeCloseTo(Math.sqrt(100e3 * 150e3), 6);
  });

  it("passes over a Reynolds number at which there is no polar", () => {
    const some: PolarLookup = (shape, reynolds) => (reynolds === 100e3 || reynolds === 3e6 ? "none" : madeUpPolars(0.3)(shape, reynolds));
    const [low, mid, high] = [60e3, 100e3, 150e3].map((reynolds) => sectionsAir(some)(cambered, reynolds)!);
    expect(mid.liftMax).toBeGreaterThan(Math.min(low.liftMax, high.liftMax));
    expect(mid.liftMax).toBeLessThan(Math.max(low.liftMax, high.liftMax));
    expect(sectionsAir(some)(cambered, 3e6)!.reynolds).toBe(1.6e6);
    expect(sectionsAir(() => "none")(cambered, 1e5)).toBeUndefined();
  });
});

describe("what is asked for", () => {
  it("is undefined while a polar is pending, which is then wanted; then known", () => {
    const shelf = new PolarShelf();
    const airs = sectionsAir(shelf.get);
    expect(airs(cambered, 120e3)).toBeUndefined();
    expect(airs(cambered, 125e3)).toBeUndefined();
    expect(shelf.wanted().map(({ reynolds }) => reynolds)).toEqual([100e3, 150e3]);
    for (const { key, reynolds } of shelf.wanted()) shelf.put(key, madeUp(reynolds));
    expect(shelf.wanted()).toEqual([]);
    expect(airs(cambered, 120e3)!.liftMax).toBeGreaterThan(1);
  });

  it("is the section upside down only where it pushes down: an estimate first, then its own polar", () => {
    const shelf = new PolarShelf();
    const airs = sectionsAir(shelf.get);
    airs(cambered, 100e3);
    shelf.put(shelf.wanted()[0].key, madeUp(100e3));
    const air = airs(cambered, 100e3)!;
    expect([air.liftMax > 0, air.drag(0.5) > 0, air.drag(-0.1) > 0, air.provisional]).toEqual([true, true, true, false]);
    expect(shelf.wanted()).toEqual([]);
    const estimate = air.liftMin;
    expect(air.provisional).toBe(true);
    expect(shelf.wanted()).toMatchObject([{ shape: upsideDown(cambered.shape), reynolds: 100e3 }]);
    const turned = madeUp(100e3, { zeroLift: 3, limit: 0.65, drag: 0.02 });
    shelf.put(shelf.wanted()[0].key, turned);
    const later = airs(cambered, 100e3)!;
    expect(later.liftMin).toBe(-turned.liftMax);
    expect(Math.abs(estimate - later.liftMin)).toBeLessThan(0.3);
    expect(later.provisional).toBe(false);
    // Where both polars meet, the one below counts from the first point of the one above on.
    expect(later.drag(-0.5)).toBeCloseTo(0.02 * 1.25, 3);
  });

  it.each<[string, Section]>([["symmetric", symmetric], ["flat", plate]])("is nothing upside down of a section that is %s", (_, section) => {
    const shelf = new PolarShelf();
    const airs = sectionsAir(shelf.get);
    airs(section, 100e3);
    for (const { key } of shelf.wanted()) shelf.put(key, madeUp(100e3, { zeroLift: 0, lowest: -0.2 }));
    const air = airs(section, 100e3)!;
    expect(air.liftMin).toBe(-air.liftMax);
    expect(air.drag(-0.6)).toBe(air.drag(0.6));
    expect(shelf.wanted()).toEqual([]);
  });
});

describe("what is written wins", () => {
  const airs = sectionsAir(madeUpPolars(0.3));
  const written = { liftMax: 1.4, zeroLiftAngle: -0.07, moment: -0.02 };
  it.each([["a computed polar", cambered], ["a plate", plate], ["a table", table]])("over %s", (_, section) => {
    expect(airs({ ...section, ...written }, 2e5)).toMatchObject(written);
  });
  it("with drag at the same share of the limit", () => {
    const plain = airs(cambered, 1e5)!;
    const raised = airs({ ...cambered, liftMax: 1.25 * plain.liftMax }, 1e5)!;
    expect(raised.drag(1.25 * 0.7)).toBeCloseTo(plain.drag(0.7), 12);
    expect(raised.doubts).not.toContain("no_stall");
  });
});

describe("between two sections", () => {
  const airs = sectionsAir(madeUpPolars(0.3));
  const ends = reynoldsGrid.slice(2, 5).flatMap((reynolds) => [airs(cambered, reynolds)!, airs(plate, reynolds)!]);
  it("is each at its end, and between in between", () => {
    fc.assert(fc.property(fc.constantFrom(...ends), fc.constantFrom(...ends), fc.double({ min: 0, max: 1, noNaN: true }), lifts, (a, b, share, lift) => {
      const air = blended(a, b, share);
      expect(blended(a, b, 0)).toBe(a);
      expect(blended(a, b, 1)).toBe(b);
      for (const of of [(one: SectionAir) => one.liftMax, (one: SectionAir) => one.liftMin, (one: SectionAir) => one.zeroLiftAngle]) {
        expect(of(air)).toBeGreaterThanOrEqual(Math.min(of(a), of(b)) - 1e-12);
        expect(of(air)).toBeLessThanOrEqual(Math.max(of(a), of(b)) + 1e-12);
      }
      expect(air.drag(lift)).toBeGreaterThan(0);
    }));
  });
});

describe("a flap", () => {
  const airs = sectionsAir(madeUpPolars(0.3));
  const deflections = fc.double({ min: -1.5, max: 1.5, noNaN: true });
  it("leaves limits in order, and changes little for a little", () => {
    fc.assert(fc.property(fc.constantFrom(...kinds), reynoldsNumbers, fc.double({ min: 0, max: 1, noNaN: true }), deflections, lifts, ([, section], reynolds, chordShare, deflection, lift) => {
      const air = flapped(airs(section, reynolds)!, { chordShare, deflection });
      expect(air.liftMin).toBeLessThan(air.liftMax);
      expect(air.drag(lift)).toBeGreaterThan(0);
      const near = flapped(airs(section, reynolds)!, { chordShare, deflection: deflection + 1e-6 });
      // Slopes are at most 2π per radian in lift, and that times the rise of drag past the limits; the seam as above.
      expect(Math.abs(near.liftMax - air.liftMax)).toBeLessThan(1e-5);
      expect(Math.abs(near.drag(lift) - air.drag(lift))).toBeLessThan(5e-5);
    }));
  });
  it("in line changes nothing", () => {
    const air = airs(cambered, 2e5)!;
    const same = flapped(air, { chordShare: 0.25, deflection: 0 });
    expect([same.zeroLiftAngle, same.moment, same.liftMax, same.liftMin, same.drag(0.4)])
      .toEqual([air.zeroLiftAngle, air.moment, air.liftMax, air.liftMin, air.drag(0.4)]);
  });
});
