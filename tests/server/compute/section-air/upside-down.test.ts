import { describe, expect, it } from "vitest";
import { nacaOutline } from "../../../../server/compute/section/naca";
import { isSymmetric, upsideDown } from "../../../../server/compute/section-air/upside-down";
import { meanLine } from "../../../../server/compute/section/mean-line";
import { thinSection } from "../../../../server/compute/section/thin-section";
import type { SectionShape } from "../../../../server/model/design/geometry";

const points = (digits: string, count = 40): SectionShape => ({ type: "coordinates", points: nacaOutline(digits, count)! });
const naca = (digits: string): SectionShape => ({ type: "naca", digits });

describe("a section turned upside down", () => {
  it.each([naca("2412"), naca("23012"), points("4415")])("has its camber the other way", (shape) => {
    const [up, down] = [shape, upsideDown(shape)].map((one) => thinSection(meanLine(one)!));
    // Mean lines are read off outlines here.
    expect(down.zeroLiftAngle).toBeCloseTo(-up.zeroLiftAngle, 2);
    expect(down.moment).toBeCloseTo(-up.moment, 2);
  });
  it("twice is as it was", () => expect(upsideDown(upsideDown(points("4415")))).toEqual(points("4415")));
});

it.each<[SectionShape, boolean]>([
  [naca("0012"), true], [naca("2412"), false], [naca("23012"), false], [points("0009"), true], [points("1409"), false],
  [{ type: "flat", thickness: 0.03 }, true],
  // The sides have points at other places, as when a file holds each for itself.
  [{ type: "coordinates", points: [...nacaOutline("0012", 200)!.slice(0, 201), ...nacaOutline("0012", 150)!.slice(151)] }, true],
])("shape %# is symmetric or not", (shape, symmetric) => expect(isSymmetric(shape)).toBe(symmetric));
