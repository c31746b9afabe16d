import { describe, expect, it } from "vitest";
import { referenceGeometry } from "../../server/compute/planform/reference-geometry";
import { surfaceGeometry } from "../../server/compute/planform/surface-geometry";
import { mirrored, tapered, type Row } from "../server/compute/airframes";
import { expectNear } from "./near";

// Standard definitions of area, mean chord and its place (R. C. Nelson, Flight Stability and Automatic Control, appendix;
// D. P. Raymer, Aircraft Design, ch. 4), evaluated from their formulas for straight edges. Both sides are exact: 0.01 % and
// 5e-6 m leave room for the printed digits.
const share = 1e-4;
const digits = 5e-6;

interface Expected {
  readonly area: number;
  readonly aspectRatio: number;
  readonly meanChord: number;
  readonly y: number;
  readonly x: number;
}

const cases: readonly (readonly [string, readonly Row[], Expected])[] = [
  ["straight taper, unswept quarter chord", [[0, 0, 0, 0.3], [0.0375, 1, 0, 0.15]],
    { area: 0.45, aspectRatio: 8.88889, meanChord: 0.233333, y: 0.444444, x: 0.016667 }],
  ["leading edge swept 30 degrees", [[0, 0, 0, 0.28], [0.8 * Math.tan(Math.PI / 6), 0.8, 0, 0.14]],
    { area: 0.336, aspectRatio: 7.61905, meanChord: 0.217778, y: 0.355556, x: 0.20528 }],
  ["two panels", [[0, 0, 0, 0.25], [0, 0.5, 0, 0.25], [0.025, 0.9, 0, 0.15]],
    { area: 0.41, aspectRatio: 7.90244, meanChord: 0.232114, y: 0.419106, x: 0.004472 }],
  ["three panels", [[0, 0, 0, 0.22], [0.01, 0.6, 0, 0.2], [0.03, 1.2, 0, 0.15], [0.075, 1.5, 0, 0.09]],
    { area: 0.534, aspectRatio: 16.85393, meanChord: 0.184981, y: 0.667978, x: 0.016826 }],
  ["delta", [[0, 0, 0, 1], [1, 0.5, 0, 0]],
    { area: 0.5, aspectRatio: 2, meanChord: 0.666667, y: 0.166667, x: 0.333333 }],
];

describe("planform", () => {
  it.each(cases)("%s", (_, rows, expected) => {
    const wing = mirrored(rows);
    const reference = referenceGeometry([wing], [])!;
    expectNear(reference.area, expected.area, share);
    expectNear(reference.aspectRatio, expected.aspectRatio, share);
    expectNear(reference.meanChord, expected.meanChord, share);
    expect(Math.abs(reference.meanChordX - expected.x)).toBeLessThan(digits);
    const own = surfaceGeometry(wing)!;
    expectNear(own.meanChord, expected.meanChord, share);
    expect(Math.abs(own.quarterPoint[1] - expected.y)).toBeLessThan(digits);
    expect(Math.abs(own.quarterPoint[0] - expected.x - expected.meanChord / 4)).toBeLessThan(digits);
  });

  it("sweep of the quarter-chord line: 28.0844 degrees for 30 at the leading edge; 7.6693 for 10 at aspect ratio 8, taper 0.5", () => {
    const degrees = 180 / Math.PI;
    expectNear(surfaceGeometry(mirrored(cases[1][1]))!.sweep * degrees, 28.0844, share);
    const root = 2 / (8 * 0.75);
    const swept = surfaceGeometry(tapered(2, root, root / 2, Math.tan(10 / degrees)))!;
    expectNear(swept.sweep * degrees, 7.6693, share);
    expectNear(swept.taper, 0.5, share);
  });

  it("ellipse of span 1.5 and root chord 0.25 in 20 straight panels", () => {
    const rows: Row[] = Array.from({ length: 21 }, (_, i) => {
      const angle = ((Math.PI / 2) * i) / 20;
      const chord = i === 20 ? 0 : 0.25 * Math.cos(angle);
      return [-chord / 4, 0.75 * Math.sin(angle), 0, chord];
    });
    const reference = referenceGeometry([mirrored(rows)], [])!;
    // 0.3 %: the straight panels lie inside the ellipse.
    expectNear(reference.area, 0.294524, 3e-3);
    expectNear(reference.aspectRatio, 7.63944, 3e-3);
    expectNear(reference.meanChord, 0.212207, 3e-3);
    expectNear(surfaceGeometry(mirrored(rows))!.quarterPoint[1], 0.31831, 3e-3);
  });

  it("dihedral: 5 degrees on flat panels of true semispan 1", () => {
    const angle = (5 * Math.PI) / 180;
    const wing = mirrored([[0, 0, 0, 0.3], [0.0375, Math.cos(angle), Math.sin(angle), 0.15]]);
    const reference = referenceGeometry([wing], [])!;
    expectNear(surfaceGeometry(wing)!.area, 0.45, share);
    expectNear(reference.area, 0.448288, share);
    expectNear(reference.span, 1.992389, share);
    expectNear(reference.aspectRatio, 8.85506, share);
  });

  it("polyhedral: 0.6 at 3 degrees, 0.5 at 9 degrees", () => {
    const [a, b] = [(3 * Math.PI) / 180, (9 * Math.PI) / 180];
    const middle: Row = [0.005, 0.6 * Math.cos(a), 0.6 * Math.sin(a), 0.2];
    const wing = mirrored([[0, 0, 0, 0.22], middle, [0.045, middle[1] + 0.5 * Math.cos(b), middle[2] + 0.5 * Math.sin(b), 0.12]]);
    const reference = referenceGeometry([wing], [])!;
    expectNear(surfaceGeometry(wing)!.area, 0.412, share);
    expectNear(reference.area, 0.409685, share);
    expectNear(reference.span, 2.186044, share);
    expectNear(reference.meanChord, 0.192096, share);
    expect(Math.abs(reference.meanChordX - 0.010512)).toBeLessThan(digits);
    expectNear(wing.halves[0].panels[1].outer.leadingEdge[2], 0.109619, share);
  });

  // P. E. Purser, J. P. Campbell, NACA Report 823, 1945: what counts is S cos² and S sin².
  it("V-tail: two panels of 0.03 m² at 35 degrees; 0.09 m² at 35.2644 for 0.06 and 0.03", () => {
    const vee = (angle: number, chord: number, length: number) =>
      surfaceGeometry(mirrored([[0, 0, 0, chord], [0, length * Math.cos(angle), length * Math.sin(angle), chord]], { kind: "tailplane" }))!;
    const first = vee((35 * Math.PI) / 180, 0.1, 0.3);
    expectNear(first.effectiveAreas.pitch, 0.040261, share);
    expectNear(first.effectiveAreas.yaw, 0.019739, share);
    expectNear(first.projectedArea, 0.049149, share);
    const second = vee((35.2644 * Math.PI) / 180, 0.1, 0.45);
    expectNear(second.effectiveAreas.pitch, 0.06, share);
    expectNear(second.effectiveAreas.yaw, 0.03, share);
  });
});
