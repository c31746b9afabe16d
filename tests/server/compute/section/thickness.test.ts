import { describe, expect, it } from "vitest";
import { sectionThickness } from "../../../../server/compute/section/thickness";

describe("thickness of a section", () => {
  it("is what the last two digits of a NACA section say, whatever its camber", () => {
    // Theirs is set out square to the mean line. Square to the chord that is more by 1 over the cosine of its slope, which is 0.075
    // at most where these are thickest: 0.3 %; and the four digits' formula itself gives 0.03 % more.
    for (const [digits, percent] of [["0009", 9], ["2412", 12], ["4408", 8], ["6406", 6], ["23112", 12]] as const) {
      const found = 100 * sectionThickness({ type: "naca", digits });
      expect(found, digits).toBeLessThan(percent * 1.004);
      expect(found, digits).toBeGreaterThan(percent * 0.999);
    }
  });

  it("is that written of a plate, and that of coordinates without their camber", () => {
    expect(sectionThickness({ type: "flat", thickness: 0.04 })).toBe(0.04);
    // A plate 3 % thick, bent to an arc of 6 %.
    const arc = (x: number) => 0.24 * x * (1 - x);
    const xs = Array.from({ length: 21 }, (_, i) => i / 20);
    const points = [...[...xs].reverse().map((x) => [x, arc(x) + 0.015] as const), ...xs.map((x) => [x, arc(x) - 0.015] as const)];
    expect(sectionThickness({ type: "coordinates", points })).toBeCloseTo(0.03, 6);
  });
});
