import { describe, expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { bladeOf } from "../../server/compute/propeller/blade";
import { idealEfficiency, idealStaticPower, idealStaticThrust } from "../../server/compute/propeller/momentum";
import { bladeLoad, propellerAt } from "../../server/compute/propeller/propeller-at";
import { rotationLimit } from "../../server/compute/propeller/rotation-limit";
import { speedAt, zeroThrustAdvance } from "../../server/compute/propeller/sweep";
import { expectNear } from "./near";
import { atTipSpeed, inch, mean, measured, propellerOf, rpm, within } from "./propeller-data";

const air = atmosphere({ altitude: 0 })!;
const standing = (propeller: ReturnType<typeof propellerOf>, tipSpeed: number) =>
  propellerAt({ propeller, rotation: atTipSpeed(propeller, tipSpeed), speed: 0, air });

describe("momentum theory", () => {
  it("gives 10.7475 N from 100 W at 254 mm in air of 1.225 kg/m³", () => {
    const area = (Math.PI * 0.254 ** 2) / 4;
    expectNear(idealStaticThrust(100, area, 1.225), 10.7475, 5e-6); // six printed digits
    expectNear(idealStaticPower(10.7475, area, 1.225), 100, 1e-5);
  });

  it("agrees with the coefficient form of the ideal efficiency", () => {
    const [thrustCoefficient, advance, density, diameter, turns] = [0.08, 0.5, 1.2, 0.3, 100];
    const thrust = thrustCoefficient * density * turns ** 2 * diameter ** 4;
    const coefficients = 2 / (1 + Math.sqrt(1 + (8 * thrustCoefficient) / (Math.PI * advance ** 2)));
    expectNear(idealEfficiency(thrust, advance * turns * diameter, (Math.PI * diameter ** 2) / 4, density), coefficients, 1e-12);
  });
});

// Bands for a blade made from type and nominal size alone. A plain blade-element calculation written to learn what can be asked
// reached 9 % and 14 % on these eleven; two campaigns of the same laboratory differ by 5 to 7 % in thrust.
describe("eleven two-blade propellers standing still at 60 m/s tip speed, UIUC Propeller Database", () => {
  const runs = measured.map(({ propeller, thrust, power }) => {
    const run = standing(propeller, 60);
    return { thrust: run.thrustCoefficient / thrust - 1, power: run.powerCoefficient / power - 1 };
  });
  const thrust = runs.map((run) => run.thrust);
  const power = runs.map((run) => run.power);

  it("thrust: mean error under 8 %, bias under 6 %, four in five within 20 %, none beyond 30 %", () => {
    expect(mean(thrust.map(Math.abs))).toBeLessThan(0.08);
    expect(Math.abs(mean(thrust))).toBeLessThan(0.06);
    expect(within(thrust, 0.8)).toBeLessThan(0.2);
    expect(within(thrust, 1)).toBeLessThan(0.3);
  });

  it("power: mean error under 10 %, bias under 10 %, four in five within 25 %, none beyond 35 %", () => {
    expect(mean(power.map(Math.abs))).toBeLessThan(0.1);
    expect(Math.abs(mean(power))).toBeLessThan(0.1);
    expect(within(power, 0.8)).toBeLessThan(0.25);
    expect(within(power, 1)).toBeLessThan(0.35);
  });
});

// Quadratics in pitch/diameter through all two-blade propellers of a type at 60 m/s tip speed (same database, own fit; rms of
// single propellers about it 8 to 12 %). The generic blades were set to these, so the mean over the range must be close;
// single points may be off by what a quadratic through scattered propellers is.
describe("means of whole types", () => {
  const types = [
    ["thin", 10, [0.5, 0.6, 0.7], [0.1263, -0.1245, 0.1255], [0.0853, -0.2169, 0.239]],
    ["wide", 10, [0.4, 0.5, 0.6, 0.7, 0.8], [0.0208, 0.2337, -0.072], [0.041, -0.0689, 0.1668]],
    ["thick", 10, [0.35, 0.5, 0.65, 0.8, 1], [0.0075, 0.2254, -0.1117], [0.0203, 0.0026, 0.0667]],
    ["folding", 11, [0.4, 0.5, 0.6, 0.7, 0.85], [-0.0202, 0.3051, -0.1645], [0.0183, -0.0197, 0.0905]],
  ] as const;

  it.each(types)("%s", (type, diameter, ratios, thrust, power) => {
    const at = ([a, b, c]: readonly [number, number, number], x: number) => a + b * x + c * x * x;
    const errors = ratios.map((ratio) => {
      const run = standing(propellerOf(diameter, ratio * diameter, type), 60);
      return { thrust: run.thrustCoefficient / at(thrust, ratio) - 1, power: run.powerCoefficient / at(power, ratio) - 1 };
    });
    expect(Math.abs(mean(errors.map((e) => e.thrust)))).toBeLessThan(0.04);
    expect(Math.abs(mean(errors.map((e) => e.power)))).toBeLessThan(0.05);
    for (const error of errors) {
      expect(Math.abs(error.thrust)).toBeLessThan(0.1);
      expect(Math.abs(error.power)).toBeLessThan(0.12);
    }
  });
});

// Fits through the fastest tunnel run of every two-blade propeller of a type (same database, own fit; rms of single propellers
// about them 0.025 to 0.084 in advance, 0.02 to 0.055 in efficiency), at the tip speed these ran at. Means must be close; a
// single ratio may be off as far as the scatter: makes of one type differ in how blade angle goes with stamped pitch.
describe("means of whole types in flight", () => {
  const types = [
    ["thin", 10, [0.5, 0.6, 0.7, 0.8], [0.169, 0.968], [0.161, 1.348, -0.779]],
    ["wide", 10, [0.4, 0.55, 0.7, 0.8], [0.233, 0.795], [0.319, 0.755, -0.3]],
    ["thick", 10, [0.4, 0.55, 0.7, 0.9], [0.188, 0.906], [0.221, 0.975, -0.492]],
    ["folding", 11, [0.4, 0.55, 0.7, 0.85], [0.126, 1.056], [0.435, 0.848, -0.515]],
  ] as const;

  it.each(types)("%s", (type, diameter, ratios, [a, b], [c, d, e]) => {
    const errors = ratios.map((ratio) => {
      const propeller = propellerOf(diameter, ratio * diameter, type);
      const blade = bladeOf(propeller);
      const rotation = atTipSpeed(propeller, 85);
      const zero = zeroThrustAdvance(blade, rotation, air)!;
      const shares = Array.from({ length: 30 }, (_, i) => 0.58 + 0.01 * i);
      const best = Math.max(...shares.map((share) => bladeLoad(blade, rotation, speedAt(blade, rotation, share * zero), air).efficiency));
      return { zero: zero - (a + b * ratio), best: best - (c + d * ratio + e * ratio ** 2) };
    });
    expect(Math.abs(mean(errors.map(({ zero }) => zero)))).toBeLessThan(0.03);
    expect(Math.abs(mean(errors.map(({ best }) => best)))).toBeLessThan(0.03);
    for (const { zero, best } of errors) {
      expect(Math.abs(zero)).toBeLessThan(0.084);
      expect(Math.abs(best)).toBeLessThan(0.07);
    }
  });
});

// Logarithmic slopes between 45 and 75 m/s tip speed. Types measure +0.09 to +0.15 in thrust with a scatter of 0.03 to 0.09, and
// −0.08 to 0 in power (slow flyers +0.15, cause not established): the ranges hold a type's mean ± two scatters.
describe("effect of rpm, through the Reynolds number", () => {
  const slopes = (type: "thin" | "wide" | "thick" | "folding", ratio: number) => {
    const propeller = propellerOf(10, 10 * ratio, type);
    const [slow, fast] = [standing(propeller, 45), standing(propeller, 75)];
    const span = Math.log(75 / 45);
    return {
      thrust: Math.log(fast.thrustCoefficient / slow.thrustCoefficient) / span,
      power: Math.log(fast.powerCoefficient / slow.powerCoefficient) / span,
    };
  };
  it.each((["thin", "wide", "thick", "folding"] as const).flatMap((type) => [0.45, 0.6, 0.8].map((ratio) => [type, ratio] as const)))(
    "%s, pitch/diameter %d", (type, ratio) => {
      const { thrust, power } = slopes(type, ratio);
      expect(thrust).toBeGreaterThan(0.02);
      expect(thrust).toBeLessThan(0.3);
      expect(power).toBeGreaterThan(type === "wide" ? -0.1 : -0.2);
      expect(power).toBeLessThan(type === "wide" ? 0.4 : 0.1);
    });
});

// Same database: chord at 0.75 R of thin electric propellers by diameter, pitch making no difference; own table of means.
describe("thin blades are slimmer the larger", () => {
  it.each([[9, 0.15], [10, 0.128], [11, 0.124], [14, 0.103], [19, 0.103]])("%d in: chord %d R", (diameter, chord) => {
    const propeller = propellerOf(diameter, 0.6 * diameter, "thin");
    const element = bladeOf(propeller, 2000).elements.find((one) => one.radius >= 0.375 * propeller.diameter)!;
    expectNear(element.chord / (propeller.diameter / 2), chord, 0.01); // printed digits
  });
});

// R. W. Deters, G. K. Ananda and M. S. Selig, AIAA 2014-2151: blade of constant chord 0.23 R and constant pitch 6.75 in, as designed.
// Measured at 45 m/s: 3/2 thrust 1.36, power 1.46; 4/2 1.64 and 1.91. Another size of the same blade gave 1.37 and 1.42: the bands
// hold both with the 5 % of the balance.
describe("more blades", () => {
  const stations = [0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 1].map((radius) => ({
    radius, chord: 0.23, angle: Math.atan(6.75 / 9 / (Math.PI * radius)),
  }));
  const [two, three, four] = [2, 3, 4].map((blades) =>
    propellerAt({ propeller: { ...propellerOf(9, 6.75, "thin", blades), stations }, rotation: 3760 * rpm, speed: 0, air }));

  it("three over two", () => {
    expect(three.thrust / two.thrust).toBeGreaterThan(1.25);
    expect(three.thrust / two.thrust).toBeLessThan(1.42);
    expect(three.power / two.power).toBeGreaterThan(1.3);
    expect(three.power / two.power).toBeLessThan(1.55);
  });

  it("four over two", () => {
    expectNear(four.thrust / two.thrust, 1.64, 0.05);
    expectNear(four.power / two.power, 1.91, 0.05);
  });
});

it("tip speed and Mach number of 12 in at 12,000 rpm: 191.5 m/s and 0.56 (D. Pappas, Model Aviation, February 2009)", () => {
  const run = propellerAt({ propeller: propellerOf(12, 6, "thick"), rotation: 12_000 * rpm, speed: 0, air });
  expect(Math.abs(run.tipSpeed - 191.5)).toBeLessThan(0.05); // as printed
  expect(Math.abs(run.tipMach - 0.56)).toBeLessThan(0.005);
});

it("a type's greatest rpm × diameter is common practice (no source), and a maker's figure goes before it", () => {
  const thin = propellerOf(10, 7, "thin");
  expectNear(rotationLimit(thin)!.rotation / rpm, 14_500, 1e-9);
  expectNear((rotationLimit(propellerOf(10, 4.7, "wide"))!.rotation * 10 * inch) / 2, 86.4, 1e-3);
  expect(rotationLimit({ ...thin, maxRotation: 900 })).toEqual({ rotation: 900, from: "maker" });
  expect(rotationLimit(propellerOf(12, 8, "folding"))).toBeUndefined();
});
