import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convexDistance } from "../../../../server/compute/convex/distance";
import { around, box, cylinder, hull } from "../../../../server/compute/convex/shapes";
import type { Vec3 } from "../../../../server/model/design/geometry";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = fc.tuple(number(-1, 1), number(-1, 1), number(-1, 1));
const size = fc.tuple(number(0.01, 1), number(0.01, 1), number(0.01, 1));
const exact = 1e-6; // m

describe("convex things", () => {
  it("two boxes: as worked out side by side", () => {
    fc.assert(fc.property(point, size, point, size, (a, s, b, t) => {
      const gaps = [0, 1, 2].map((i) => Math.max(0, Math.abs(a[i] - b[i]) - (s[i] + t[i]) / 2));
      expect(Math.abs(convexDistance(box(a, s), box(b, t)) - Math.hypot(...gaps))).toBeLessThan(exact);
    }), { numRuns: 500 });
  });

  it("a cylinder and a point: as worked out in its own axes", () => {
    fc.assert(fc.property(point, point, point, number(0.05, 0.5), number(0, 0.2), (centre, lean, other, radius, length) => {
      const long = Math.hypot(lean[0], lean[1], lean[2] + 2);
      const axis: Vec3 = [lean[0] / long, lean[1] / long, (lean[2] + 2) / long];
      const away = other.map((x, i) => x - centre[i]);
      const axial = away.reduce((sum, x, i) => sum + x * axis[i], 0);
      const across = Math.sqrt(Math.max(0, away.reduce((sum, x) => sum + x * x, 0) - axial ** 2));
      const known = Math.hypot(Math.max(0, across - radius), Math.max(0, Math.abs(axial) - length / 2));
      expect(Math.abs(convexDistance(cylinder(centre, axis, radius, length), hull([other])) - known)).toBeLessThan(exact);
    }), { numRuns: 500 });
  });

  it("either way round, and no nearer when moved apart", () => {
    fc.assert(fc.property(point, size, point, number(0.05, 0.5), (a, s, b, radius) => {
      const disc = (x: number) => cylinder([b[0] + x, b[1], b[2]], [-1, 0, 0], radius, 0.02);
      const distance = convexDistance(box(a, s), disc(0));
      expect(Math.abs(convexDistance(disc(0), box(a, s)) - distance)).toBeLessThan(exact);
      const farther = convexDistance(box(a, s), disc(b[0] >= a[0] ? 0.1 : -0.1));
      expect(farther).toBeGreaterThan(distance - exact);
    }), { numRuns: 300 });
  });

  it("what lies around two things is at least as near as either", () => {
    fc.assert(fc.property(point, size, point, size, (a, s, b, t) => {
      const far = hull([[3, 3, 3]]);
      const both = convexDistance(around(box(a, s), box(b, t)), far);
      expect(both).toBeLessThan(Math.min(convexDistance(box(a, s), far), convexDistance(box(b, t), far)) + exact);
    }));
  });
});
