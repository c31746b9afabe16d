import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eigenvalues, type Complex } from "../../server/compute/modes/eigenvalues";
import { lateralMatrix, lateralModes, lateralModesOf, type LateralFlight } from "../../server/compute/modes/lateral";
import { longitudinalMatrix, longitudinalModes, longitudinalModesOf, type LongitudinalFlight } from "../../server/compute/modes/longitudinal";
import { halvingTime } from "../../server/compute/modes/motion";
import { expectNear } from "./near";

// Values evaluated from the published data in double precision; both sides are exact, so 0.5 % (0.1 % where said) is only for the
// printed digits.
const digits = 5e-3;

function expectRoot(root: Complex, re: number, im: number, share = digits): void {
  expectNear(root.re, re, share);
  expectNear(Math.abs(root.im), im, share);
}

// North American Navion at sea level, feet, pounds and slugs (G. L. Teper, NASA CR-96008, 1969; E. Seckel, J. J. Morris,
// FAA-RD-71-6, 1971; mass and inertia from memory). Equations of R. C. Nelson, Flight Stability and Automatic Control, 1998.
const mass = 2750 / 32.2;
const navion: LongitudinalFlight = {
  density: 0.002378, speed: 176, area: 184, meanChord: 5.7, mass, gravity: 32.2, pitchInertia: 3000, lift: 0.41, drag: 0.05,
  liftSlope: 4.44, dragSlope: 0.33, momentSlope: -0.683, liftRate: 0, momentRate: -9.96, lagLift: 0, lagMoment: -4.36,
};
const navionLateral: LateralFlight = {
  density: 0.002378, speed: 176, area: 184, span: 33.4, mass, gravity: 32.2, rollInertia: 1048, yawInertia: 3530, product: 0,
  derivatives: {
    sideslip: { side: -0.564, roll: -0.074, yaw: 0.071 }, rollRate: { side: 0, roll: -0.41, yaw: -0.0575 },
    yawRate: { side: 0, roll: 0.107, yaw: -0.125 },
  },
};

describe("Navion, longitudinal", () => {
  it("matrix", () => {
    const [along, down, nose] = longitudinalMatrix(navion);
    expectNear(along[0], -0.0451, digits);
    expectNear(along[1], 0.0361, digits);
    expectNear(down[0], -0.3697, digits);
    expectNear(down[1], -2.0243, digits);
    expect(down[2]).toBe(176);
    // Mw + Mẇ Zw and Mq + Mẇ V of the printed derivatives.
    expectNear(nose[1], -0.05 + 0.00517 * 2.0243, digits);
    expectNear(nose[2], -2.0767 - 0.00517 * 176, digits);
  });
  it("short period and phugoid", () => {
    const { roots, shortPeriod, phugoid } = longitudinalModes(navion)!;
    expectRoot(roots[0], -2.5105, 2.5918);
    expectRoot(roots[2], -0.01712, 0.21306);
    expectNear(shortPeriod!.frequency, 3.608, digits);
    expectNear(shortPeriod!.damping, 0.696, digits);
    expectNear(phugoid!.damping, 0.0801, digits);
    expectNear((2 * Math.PI) / roots[2].im, 29.49, digits);
    expectNear(halvingTime(roots[2]), Math.LN2 / 0.01712, digits);
  });
  it("the two-state form of the short period is near: 3.605 and 0.695", () => {
    const { shortPeriod } = longitudinalModes(navion)!;
    // 0.5 %: the form leaves the phugoid out, which moves it by 0.1 %.
    expectNear(shortPeriod!.frequency, 3.605, digits);
    expectNear(shortPeriod!.damping, 0.695, digits);
  });
  it("printed matrix (R. C. Nelson, example 4.3; from memory)", () => {
    const { roots } = longitudinalModesOf([[-0.045, 0.036, 0, -32.2], [-0.369, -2.02, 176, 0], [0.0019, -0.0396, -2.948, 0], [0, 0, 1, 0]])!;
    expectRoot(roots[0], -2.4895, 2.5978);
    expectRoot(roots[2], -0.017, 0.2135);
  });
});

describe("Navion, lateral", () => {
  it("matrix", () => {
    const [side, roll, yaw] = lateralMatrix(navionLateral);
    expectNear(side[0], -44.75 / 176, digits);
    expectNear(roll[0], -15.98, digits);
    expectNear(roll[1], -8.402, digits);
    expectNear(roll[2], 2.193, digits);
    expectNear(yaw[0], 4.553, digits);
    expectNear(yaw[1], -0.35, digits);
    expectNear(yaw[2], -0.761, digits);
  });
  it("roll, Dutch roll and spiral", () => {
    const { roots, rollTime, dutchRoll, spiral } = lateralModes(navionLateral)!;
    expectNear(spiral!, -0.0082, 0.03); // a difference of products near each other
    expectNear(-1 / rollTime!, -8.435, digits);
    expectRoot(roots[1], -0.487, 2.3472);
    expectNear(dutchRoll!.frequency, 2.397, digits);
    expectNear(dutchRoll!.damping, 0.203, digits);
  });
  it("printed matrix (R. C. Nelson, example 5.3; from memory)", () => {
    const { roots, spiral } = lateralModesOf([[-0.254, 0, -1, 0.182], [-16.02, -8.4, 2.19, 0], [4.488, -0.35, -0.76, 0], [0, 1, 0, 0]])!;
    expectNear(spiral!, -0.00891, 0.03);
    expectNear(roots[0].re, -8.433, digits);
    expectRoot(roots[1], -0.4862, 2.3336);
  });
  it("a product of inertia couples as the inverse of the inertia matrix does", () => {
    const with_ = lateralMatrix({ ...navionLateral, product: 300 });
    const without = lateralMatrix(navionLateral);
    // Ix ṗ − Ixz ṙ is the rolling moment, whatever the product.
    for (let i = 0; i < 3; i++) {
      expect(1048 * with_[1][i] - 300 * with_[2][i]).toBeCloseTo(1048 * without[1][i], 6);
      expect(3530 * with_[2][i] - 300 * with_[1][i]).toBeCloseTo(3530 * without[2][i], 6);
    }
  });
});

describe("others", () => {
  it("Boeing 747 at 40 000 ft (B. Etkin, L. D. Reid, Dynamics of Flight, 1996, 6.2; data NASA CR-2144)", () => {
    const { roots } = longitudinalModesOf([
      [-0.006868, 0.01395, 0, -32.2], [-0.09055, -0.3151, 773.98, 0], [0.0001187, -0.001026, -0.4285, 0], [0, 0, 1, 0],
    ])!;
    expectRoot(roots[0], -0.37195, 0.88754, 1e-3);
    expectRoot(roots[2], -0.003289, 0.067231, 1e-3);
  });
  it("Lanchester's phugoid: period π√2 V/g, damping drag over lift / √2", () => {
    // So stiff in pitch that the incidence stays, at 15 m/s: 6.796 s and 0.0589. 1 %: stiff, not rigid, and the damping of 0.0589 itself
    // lengthens the period by 0.2 %.
    const lift = 0.5;
    const flight = { speed: 15, density: 1.225, area: 0.4, meanChord: 0.2, pitchInertia: 0.001, lift, drag: lift / 12, liftSlope: 5, dragSlope: 0 };
    const weight = (lift * 1.225 * 15 ** 2 * 0.4) / 2;
    const { phugoid } = longitudinalModes({
      ...flight, mass: weight / 9.80665, momentSlope: -200, liftRate: 0, momentRate: -1, lagLift: 0, lagMoment: 0,
    })!;
    expectNear((2 * Math.PI) / phugoid!.frequency, 6.796, 0.01);
    expectNear(phugoid!.damping, 0.0589, 0.01);
  });
  it("Cessna Ce500, symmetric (J. A. Mulder et al., Flight Dynamics, TU Delft)", () => {
    // Their rates are by c/V, ours by c/2V; mass from μc = m/ρSc = 102.7, inertia from KY² = 0.98.
    const [density, area, meanChord, speed] = [1, 1, 2.022, 59.9];
    const { roots } = longitudinalModes({
      density, area, meanChord, speed, mass: 102.7 * meanChord, pitchInertia: 102.7 * 0.98 * meanChord ** 3,
      gravity: (1.136 * speed ** 2) / (2 * 102.7 * meanChord), lift: 1.136, drag: 0.2199 / 2, liftSlope: 5.16 - 0.2199 / 2,
      dragSlope: 1.136 - 0.4653, momentSlope: -0.43, liftRate: 2 * 3.86, momentRate: -2 * 7.04, lagLift: 2 * 1.43, lagMoment: -2 * 3.7,
    })!;
    expectRoot(roots[0], -1.1601, 1.124);
    expectRoot(roots[2], -0.00862, 0.19554);
  });
});

describe("eigenvalues", () => {
  const entry = fc.double({ min: -50, max: 50, noNaN: true });
  it("satisfy trace and determinant, in conjugate pairs", () => {
    fc.assert(fc.property(fc.array(fc.array(entry, { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 }), (matrix) => {
      const roots = eigenvalues(matrix)!;
      const largest = Math.max(1, ...matrix.flat().map(Math.abs));
      expect(roots).toHaveLength(4);
      const trace = matrix.reduce((sum, row, i) => sum + row[i], 0);
      expect(Math.abs(roots.reduce((sum, { re }) => sum + re, 0) - trace)).toBeLessThan(1e-6 * largest);
      expect(Math.abs(roots.reduce((sum, { im }) => sum + im, 0))).toBeLessThan(1e-6 * largest);
      const squares = matrix.reduce((sum, row, i) => sum + row.reduce((part, value, j) => part + value * matrix[j][i], 0), 0);
      expect(Math.abs(roots.reduce((sum, { re, im }) => sum + re * re - im * im, 0) - squares)).toBeLessThan(1e-6 * largest ** 2);
    }), { numRuns: 1000 });
  });
  it("of a triangle are its diagonal", () => {
    const roots = eigenvalues([[-8, 1, 2, 3], [0, -0.001, 5, 1], [0, 0, 2, 7], [0, 0, 0, 0]])!;
    expect(roots.map(({ im }) => im)).toEqual([0, 0, 0, 0]);
    [-8, 2, -0.001, 0].forEach((value, i) => expect(roots[i].re).toBeCloseTo(value, 9));
  });
  it("are none of what isn't finite", () => expect(eigenvalues([[NaN]])).toBeUndefined());
  it("a statically unstable aircraft has no short period that swings", () => {
    const { shortPeriod, phugoid, roots } = longitudinalModes({ ...navion, momentSlope: 1 })!;
    expect(roots.some(({ re, im }) => re > 0 && im === 0)).toBe(true);
    expect(shortPeriod === undefined || phugoid === undefined).toBe(true);
  });
});
