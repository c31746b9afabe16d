import { describe, expect, it } from "vitest";
import { PolarShelf } from "../../../../server/compute/section-air/polar-shelf";
import { sectionsAir } from "../../../../server/compute/section-air/sections-air";
import { upsideDown } from "../../../../server/compute/section-air/upside-down";
import type { MeasuredPoint, Section } from "../../../../server/model/design/geometry";

const degree = Math.PI / 180;
const point = (angle: number, lift: number): MeasuredPoint => ({ angle: angle * degree, lift, drag: 0.01 + 0.01 * lift * lift });
const run = (points: readonly MeasuredPoint[], reynolds = 1e5): Section["polar"] => ({ runs: [{ reynolds, points }] });
const line = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => point(from + i, 0.1 * (from + i + 2)));
const flat: Section["shape"] = { type: "flat", thickness: 0.03 };
const naca: Section["shape"] = { type: "naca", digits: "2412" };

const at = (section: Section, reynolds = 1e5) => {
  const shelf = new PolarShelf();
  return { air: sectionsAir(shelf.get)(section, reynolds)!, shelf };
};

describe("a measured table", () => {
  it("needs no polar, and says if it ends before lift does", () => {
    const { air, shelf } = at({ shape: naca, polar: run(line(-3, 10)) });
    expect([air.liftMax, air.doubts]).toEqual([1.2000000000000002, ["no_stall"]]);
    expect(shelf.wanted()).toEqual([]);
    expect(at({ shape: naca, polar: run([...line(-3, 10), point(11, 1.1)]) }).air.doubts).toEqual([]);
  });

  it("that shows the stall pushing down has it from there", () => {
    const { air, shelf } = at({ shape: naca, polar: run([point(-10, -0.5), point(-9, -0.6), point(-8, -0.6), ...line(-7, 10)]) });
    expect(air.liftMin).toBe(-0.6);
    expect(air.drag(-0.55)).toBeCloseTo(0.01 + 0.01 * 0.55 ** 2, 3);
    expect([air.provisional, shelf.wanted()]).toEqual([false, []]);
  });

  it("that doesn't asks for the section upside down at the Reynolds numbers around", () => {
    const { air, shelf } = at({ shape: naca, polar: run(line(-3, 10), 120e3) }, 120e3);
    expect(air.liftMin).toBeLessThan(-0.5);
    expect(air.provisional).toBe(true);
    expect(shelf.wanted()).toMatchObject([{ shape: upsideDown(naca), reynolds: 100e3 }, { reynolds: 150e3 }]);
  });

  it("without a shape has an estimate from its own limit and angle of no lift", () => {
    const { air, shelf } = at({ shape: flat, polar: run(line(-3, 10)) });
    // 1.2 less 1.6 times the lift of two degrees at 2π.
    expect(air.liftMin).toBeCloseTo(-1.2 + 1.6 * 2 * Math.PI * 2 * degree, 3);
    expect([air.provisional, shelf.wanted()]).toEqual([false, []]);
  });

  it("without moments takes that of the mean line", () => {
    expect(at({ shape: naca, polar: run(line(-3, 10)) }).air.moment).toBeCloseTo(-0.053, 3);
    expect(at({ shape: flat, polar: run(line(-3, 10)) }).air.moment).toBeCloseTo(0, 12);
  });

  it("of few points, far apart, still has a line", () => {
    const points = [point(-8, -0.6), point(0, 0.2), point(12, 0.9), point(14, 0.95), point(16, 0.9)];
    const { air } = at({ shape: flat, polar: run(points) });
    // Lift crosses nothing at -2 deg; the line stays within a degree of that.
    expect(Math.abs(air.zeroLiftAngle / degree + 2)).toBeLessThan(1 + 1e-9);
    expect(air.liftSlope).toBeGreaterThan(4);
  });
});
