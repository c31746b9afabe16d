import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polarMemory } from "../../../../server/compute/polar/memory";
import { polarRange, polarsOf } from "../../../../server/compute/polar/polar";
import { nacaOutline } from "../../../../server/compute/section/naca";

const thickness = fc.integer({ min: 6, max: 21 }).map((value) => String(value).padStart(2, "0"));
const camber = fc.oneof(
  fc.constant("00"),
  fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 2, max: 6 })).map((pair) => pair.join("")),
  fc.constantFrom("210", "220", "230", "240", "250", "221", "231", "241", "251"),
);
const digits = fc.tuple(camber, thickness).map((pair) => pair.join(""));
const reynolds = fc.double({ min: Math.log(polarRange[0]), max: Math.log(polarRange[1]), noNaN: true }).map(Math.exp);

describe("polars of any section", () => {
  it("are finite and plausible", () => {
    fc.assert(fc.property(digits, reynolds, (each, number) => {
      const polar = polarsOf({ type: "naca", digits: each })(number)!;
      expect(polar).toBeDefined();
      const { zeroLiftAngle, liftSlope, moment, liftMax, angleAtLiftMax, dragMin, points } = polar;
      for (const value of [zeroLiftAngle, moment, angleAtLiftMax, ...points.flatMap((p) => [p.angle, p.lift, p.drag, p.moment])]) {
        expect(Number.isFinite(value)).toBe(true);
      }
      expect(liftSlope).toBeGreaterThan(1);
      expect(liftSlope).toBeLessThan(15);
      expect(liftMax).toBeGreaterThan(0.3);
      expect(liftMax).toBeLessThan(2.5);
      expect(dragMin).toBeGreaterThan(0.002);
      expect(dragMin).toBeLessThan(0.12);
      points.forEach((point, i) => expect(i === 0 || point.angle > points[i - 1].angle).toBe(true));
    }), { numRuns: 12, seed: 4 });
  }, 240_000);

  it("a symmetric section's polar is symmetric", () => {
    const { zeroLiftAngle, moment, points } = polarsOf({ type: "naca", digits: "0010" })(300_000)!;
    expect([zeroLiftAngle, moment]).toEqual([0, 0]);
    for (const { angle, lift } of points.filter((point) => point.angle < 0)) {
      expect(points.find((point) => Math.abs(point.angle + angle) < 1e-9)!.lift).toBe(-lift);
    }
  }, 30_000);

  it("a formula and its coordinates give the same", () => {
    const formula = polarsOf({ type: "naca", digits: "2412" })(400_000)!;
    const points = nacaOutline("2412", 60)!;
    const file = polarsOf({ type: "coordinates", points })(400_000)!;
    // Sixty points a side, and a blunt edge closed another way.
    expect(Math.abs(file.zeroLiftAngle - formula.zeroLiftAngle)).toBeLessThan(0.003);
    expect(Math.abs(file.liftMax - formula.liftMax)).toBeLessThan(0.03);
    expect(Math.abs(file.dragMin / formula.dragMin - 1)).toBeLessThan(0.03);
  }, 30_000);

  it("has none of a flat plate, nor of digits that are no section", () => {
    expect(polarsOf({ type: "flat", thickness: 0.03 })(200_000)).toBeUndefined();
    expect(polarsOf({ type: "naca", digits: "9012" })(200_000)).toBeUndefined();
  });

  it("remembers", () => {
    const memory = polarMemory();
    const first = memory({ type: "naca", digits: "2410" }, 300_000);
    expect(memory({ type: "naca", digits: "2410" }, 300_000)).toBe(first);
    expect(memory({ type: "naca", digits: "2410" }, 310_000)).not.toBe(first);
  }, 30_000);
});
