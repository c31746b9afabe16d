import { describe, expect, it } from "vitest";
import { dragCurve } from "../../../../server/compute/section-air/drag-curve";

const points = (...all: readonly (readonly [lift: number, drag: number])[]) => all.map(([lift, drag]) => ({ lift, drag }));

describe("a curve of drag over lift", () => {
  it("goes through the points up to the highest lift", () => {
    const { least, most, drag } = dragCurve(points([-0.4, 0.02], [0, 0.01], [0.5, 0.012], [1.1, 0.03], [1.0, 0.09]));
    expect([least, most]).toEqual([-0.4, 1.1]);
    expect([-0.4, -0.2, 0, 0.25, 1.1].map((lift) => +drag(lift).toFixed(6))).toEqual([0.02, 0.015, 0.01, 0.011, 0.03]);
  });
  it("passes over lifts that go back", () => {
    const { drag } = dragCurve(points([-0.02, 0.011], [0.1, 0.01], [0.05, 0.5], [0.3, 0.02], [0.3, 0.7], [0.6, 0.03]));
    expect(drag(0.2)).toBeCloseTo(0.015, 12);
    expect(drag(0.45)).toBeCloseTo(0.025, 12);
  });
  it("is led up to a leap, upwards and downwards", () => {
    const up = dragCurve(points([0, 0.01], [0.4, 0.05], [0.405, 0.25], [0.6, 0.3])).drag;
    const down = dragCurve(points([-0.6, 0.3], [-0.405, 0.25], [-0.4, 0.05], [0, 0.01])).drag;
    for (const drag of [(lift: number) => up(lift), (lift: number) => down(-lift)]) {
      expect(drag(0.4)).toBeCloseTo(0.245, 12);
      expect(drag(0)).toBe(0.01);
      expect(drag(0.405)).toBe(0.25);
    }
  });
  it("rises past its limit, the more the farther", () => {
    const { drag } = dragCurve(points([0, 0.01], [1, 0.03]));
    const [a, b, c] = [1, 1.2, 1.4].map(drag);
    expect(b - a).toBeGreaterThan(0);
    expect(c - b).toBeGreaterThan(b - a);
  });
  it("of one point is finite too", () => {
    const { drag } = dragCurve(points([0.2, 0.01]));
    expect([drag(-1), drag(0.2), drag(2)].every((value) => Number.isFinite(value) && value >= 0.01)).toBe(true);
  });
});
