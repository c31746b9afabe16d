import { describe, expect, it } from "vitest";
import { meanLine } from "../../server/compute/section/mean-line";
import { nacaHalfThickness, nacaMeanLine, nacaNoseRadius, nacaOutline } from "../../server/compute/section/naca";
import { thinSection } from "../../server/compute/section/thin-section";
import { expectNear } from "./near";

const degrees = 180 / Math.PI;

/** Upper and lower ordinate at share x, by interpolation in a fine outline. */
function ordinates(digits: string, x: number): [number, number] {
  const count = 4000;
  const points = nacaOutline(digits, count)!;
  const at = (side: readonly (readonly [number, number])[]) => {
    const i = side.findIndex((p, k) => k > 0 && side[k - 1][0] <= x && x <= p[0]);
    const [[x0, y0], [x1, y1]] = [side[i - 1], side[i]];
    return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  };
  return [at(points.slice(0, count + 1).reverse()), at(points.slice(count))];
}

// NACA Report 460 (four digits) and Report 537 (five digits), evaluated from their formulas; they agree with the tables of
// NACA Report 824 (from memory) to 0.02 % of the chord. Per cent of chord: x, upper, lower.
const outlines: Readonly<Record<string, readonly (readonly [number, number, number])[]>> = {
  "0012": [[1.25, 1.894, -1.894], [5, 3.555, -3.555], [10, 4.683, -4.683], [30, 6.002, -6.002], [60, 4.563, -4.563], [90, 1.448, -1.448]],
  "2412": [[1.25, 2.16, -1.652], [5, 4.131, -3.005], [10, 5.629, -3.761], [20, 7.261, -4.228], [30, 7.879, -4.129],
    [40, 7.803, -3.803], [60, 6.351, -2.778], [80, 3.75, -1.502], [90, 2.071, -0.829]],
  "4412": [[1.25, 2.448, -1.434], [5, 4.731, -2.482], [10, 6.598, -2.864], [20, 8.797, -2.732], [30, 9.759, -2.259],
    [40, 9.803, -1.803], [60, 8.14, -0.996], [80, 4.882, -0.386], [90, 2.699, -0.215]],
  "23012": [[1.25, 2.673, -1.26], [5, 4.916, -2.262], [10, 6.437, -2.938], [20, 7.498, -3.979], [30, 7.549, -4.457],
    [40, 7.134, -4.475], [60, 5.456, -3.673], [80, 3.072, -2.176], [90, 1.673, -1.223]],
};

describe("NACA sections", () => {
  it.each(Object.entries(outlines))("outline of %s", (digits, rows) => {
    for (const [x, upper, lower] of rows) {
      const [above, below] = ordinates(digits, x / 100);
      // The table is rounded to 0.001 %; the fine outline is interpolated.
      expect(Math.abs(above * 100 - upper)).toBeLessThan(0.002);
      expect(Math.abs(below * 100 - lower)).toBeLessThan(0.002);
    }
  });

  it("thickness form of Report 460: greatest thickness, trailing edge, nose radius", () => {
    const steps = Array.from({ length: 10_001 }, (_, i) => i / 10_000);
    const greatest = steps.reduce((a, x) => (nacaHalfThickness(0.12, x) > nacaHalfThickness(0.12, a) ? x : a), 0);
    expect(Math.abs(greatest - 0.299828)).toBeLessThan(0.0002); // steps of 0.0001
    expectNear(2 * nacaHalfThickness(0.12, greatest), 0.1200345, 1e-6);
    expectNear(2 * nacaHalfThickness(0.12, 1), 0.00252, 1e-3);
    expect(nacaHalfThickness(0.12, 1, true)).toBeCloseTo(0, 12);
    expectNear(nacaNoseRadius(0.12), 0.015867, 1e-4);
    expectNear(nacaNoseRadius(0.09), 0.008925, 1e-4);
  });

  it("area of the uncambered section, open and closed", () => {
    const area = (closed: boolean) => {
      const points = nacaOutline("0012", 2000, closed)!;
      return Math.abs(points.reduce((sum, [x, y], i) => {
        const [u, v] = points[(i + 1) % points.length];
        return sum + (x * v - u * y) / 2;
      }, 0));
    };
    expectNear(area(false), 0.685083 * 0.12, 1e-4); // closed formula; 2000 intervals
    expectNear(area(true), 0.680883 * 0.12, 1e-4);
  });

  it("mean lines: greatest camber and slope at the nose", () => {
    const four = nacaMeanLine("2412")!;
    expect(four.height(0.4)).toBeCloseTo(0.02, 12);
    expect(four.slope(0)).toBeCloseTo(0.1, 12);
    expect(four.slope(0.4)).toBeCloseTo(0, 12);
    const five = nacaMeanLine("23012")!;
    expectNear(five.height(0.1499), 0.018386, 1e-3); // four printed digits
    expect(Math.abs(five.slope(0.1499))).toBeLessThan(1e-3);
    expectNear(five.slope(0), 0.3051, 1e-3);
  });
});

// Glauert's integrals of the same mean lines; D-01 to D-05: degrees, moment about c/4, degrees, lift.
const thin: readonly (readonly [string, number, number, number, number])[] = [
  ["2412", -2.0772, -0.05312, 0.257, 0.256],
  ["4412", -4.1545, -0.10624, 0.515, 0.5121],
  ["6412", -6.2317, -0.15936, 0.772, 0.7681],
  ["23012", -1.0936, -0.01284, 1.643, 0.3],
  ["2512", -2.2918, -0.06283, 0, 0.2513],
];

describe("thin-section theory", () => {
  it.each(thin)("NACA %s", (digits, zeroLift, moment, ideal, lift) => {
    const found = thinSection(nacaMeanLine(digits)!);
    // Same integrals of the same line: 0.1 % is the integration of the kink at the greatest camber.
    expectNear(found.zeroLiftAngle * degrees, zeroLift, 1e-3);
    expectNear(found.moment, moment, 1e-3);
    expect(Math.abs(found.idealAngle * degrees - ideal)).toBeLessThan(2e-3); // three printed decimals
    expectNear(found.idealLift, lift, 1e-3);
  });

  it("NACA 23012 at 4 degrees: lift 0.559, centre of pressure 0.273 (Anderson, Fundamentals of Aerodynamics, ch. 4)", () => {
    const found = thinSection(nacaMeanLine("23012")!);
    const lift = 2 * Math.PI * (4 / degrees - found.zeroLiftAngle);
    expectNear(lift, 0.5586, 1e-3);
    expectNear(0.25 - found.moment / lift, 0.273, 1e-3);
  });

  it.each(["2412", "4412", "23012"])("%s given as an outline of 35 points a side", (digits) => {
    const formula = thinSection(nacaMeanLine(digits)!);
    const outline = thinSection(meanLine({ type: "coordinates", points: nacaOutline(digits, 35)! })!);
    // Half way at the same x is not half way normal to the line: the slopes differ by the square of the side's own slope,
    // 1.4 % at the tail of a 12 % section and more at the nose. Measured: 1.7, 1.7, 3.8 % and 0.0003, 0.0007, 0.0021.
    expectNear(outline.zeroLiftAngle, formula.zeroLiftAngle, 0.04);
    expect(Math.abs(outline.moment - formula.moment)).toBeLessThan(0.0025);
  });
});
