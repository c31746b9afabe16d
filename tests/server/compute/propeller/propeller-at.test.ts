import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { bladeOf } from "../../../../server/compute/propeller/blade";
import { movedShare } from "../../../../server/compute/propeller/element-load";
import { idealEfficiency, idealStaticThrust } from "../../../../server/compute/propeller/momentum";
import { bladeLoad, propellerAt } from "../../../../server/compute/propeller/propeller-at";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { anyAdvance, anyAir, anyPropeller, anyStations, anyTipSpeed } from "./arbitrary";

const air = atmosphere({ altitude: 0 })!;
const turnsOf = (diameter: number, tipSpeed: number) => tipSpeed / (Math.PI * diameter);

describe("a propeller of any type", () => {
  // 0.79 is the most any of 174 measured two-blade propellers reached (UIUC Propeller Database); over 0.80 would be suspect.
  it("standing still pulls, and never beats a figure of merit of 0.80", () => {
    fc.assert(fc.property(anyPropeller, anyTipSpeed, anyAir, (propeller, tipSpeed, air) => {
      const run = propellerAt({ propeller, rotation: (2 * tipSpeed) / propeller.diameter, speed: 0, air });
      expect(run.thrust).toBeGreaterThan(0);
      expect(run.figureOfMerit).toBeGreaterThan(0);
      expect(run.figureOfMerit).toBeLessThanOrEqual(0.8);
      expect(run.thrust).toBeLessThan(idealStaticThrust(run.power, (Math.PI * propeller.diameter ** 2) / 4, air.density));
    }), { numRuns: 300 });
  });

  // The nearest a measured propeller came to the ideal efficiency is 0.937 of it; over 0.95 would be suspect.
  it("moving never beats 0.95 of the ideal efficiency, and gives no power for nothing", () => {
    fc.assert(fc.property(anyPropeller, anyTipSpeed, anyAdvance, (propeller, tipSpeed, advance) => {
      const speed = advance * turnsOf(propeller.diameter, tipSpeed) * propeller.diameter;
      const run = propellerAt({ propeller, rotation: (2 * tipSpeed) / propeller.diameter, speed, air });
      if (run.thrust > 0) expect(run.power).toBeGreaterThan(0);
      if (run.thrust > 0 && speed > 0.01) {
        expect(run.efficiency).toBeLessThan(0.95 * idealEfficiency(run.thrust, speed, (Math.PI * propeller.diameter ** 2) / 4, air.density));
      }
      // A windmill takes no more than the wind gives: what brakes times the speed.
      if (run.power < 0) expect(-run.power).toBeLessThan(-run.thrust * speed);
    }), { numRuns: 300 });
  });
});

it("a propeller of any stations, at any speed, has a finite load, and standing still is under the momentum bound", () => {
  fc.assert(fc.property(anyStations, anyTipSpeed, anyAdvance, (propeller, tipSpeed, advance) => {
    const rotation = (2 * tipSpeed) / propeller.diameter;
    for (const speed of [0, (advance * tipSpeed) / Math.PI]) {
      const run = propellerAt({ propeller, rotation, speed, air });
      for (const value of [run.thrust, run.torque, run.power, run.efficiency, run.figureOfMerit]) expect(Number.isFinite(value)).toBe(true);
      if (speed === 0) expect(run.figureOfMerit).toBeLessThan(1);
    }
  }), { numRuns: 300 });
});

it("cannot jump: a little more rotation, a little more thrust", () => {
  fc.assert(fc.property(anyPropeller, anyTipSpeed, (propeller, tipSpeed) => {
    const rotation = (2 * tipSpeed) / propeller.diameter;
    const [slow, fast] = [1, 1.001].map((share) => propellerAt({ propeller, rotation: share * rotation, speed: 0, air }).thrust);
    // Thrust goes by rotation² and at most another 0.3 of a power through the Reynolds number.
    expect(fast / slow).toBeGreaterThan(1.0015);
    expect(fast / slow).toBeLessThan(1.0025);
  }), { numRuns: 100 });
});

it("moves less air at the tip and the root: Prandtl's share, by hand", () => {
  const blade = { count: 2, diameter: 2, hubRadius: 0.15 };
  // f = (1 − 0.9)/0.9/0.1 at the tip; the root is too far to count.
  expectNear(movedShare(blade, 0.9, 0.1), (2 / Math.PI) * Math.acos(Math.exp(-1 / 0.9)), 1e-9);
  expectNear(movedShare({ ...blade, count: 4 }, 0.9, 0.1), (2 / Math.PI) * Math.acos(Math.exp(-2 / 0.9)), 1e-9);
  const root = (0.2 - 0.15) / 0.15 / 0.5;
  const tip = (1 - 0.2) / 0.2 / 0.5;
  expectNear(movedShare(blade, 0.2, 0.5), ((2 / Math.PI) ** 2) * Math.acos(Math.exp(-root)) * Math.acos(Math.exp(-tip)), 1e-9);
  expectNear(movedShare(blade, 1, 0), 1e-4, 1e-9);
});

it("agrees with ten times as many blade elements", () => {
  for (const type of ["thin", "wide", "thick", "folding"] as const) {
    for (const speed of [0, 10]) {
      const propeller = propellerOf(10, 6, type);
      const [few, many] = [bladeOf(propeller), bladeOf(propeller, 240)].map((blade) => bladeLoad(blade, 600, speed, air));
      expectNear(few.thrust, many.thrust, 0.003); // as `bladeOf` says
      expectNear(few.torque, many.torque, 0.003);
    }
  }
});

it("does not change as size and speed change together with the air: only coefficients and Reynolds number count", () => {
  const small = propellerAt({ propeller: propellerOf(16, 8, "wide"), rotation: 500, speed: 5, air });
  const thin = { ...air, density: air.density / 2, viscosity: air.viscosity };
  const large = propellerAt({ propeller: propellerOf(32, 16, "wide"), rotation: 250, speed: 5, air: thin });
  expectNear(large.thrustCoefficient, small.thrustCoefficient, 1e-9);
  expectNear(large.powerCoefficient, small.powerCoefficient, 1e-9);
});

it("takes two or more stations as the blade, in any order, and passes over one alone", () => {
  const plain = propellerOf(10, 6, "thin");
  const stations = [0.2, 0.6, 1].map((radius) => ({ radius, chord: 0.15, angle: Math.atan(0.6 / (Math.PI * radius)) }));
  const at = (propeller: typeof plain) => propellerAt({ propeller, rotation: 600, speed: 0, air }).thrust;
  expect(at({ ...plain, stations })).not.toBe(at(plain));
  expect(at({ ...plain, stations: [...stations].reverse() })).toBe(at({ ...plain, stations }));
  expect(at({ ...plain, stations: stations.slice(0, 1) })).toBe(at(plain));
});

it("blades set to blow forward do", () => {
  const stations = [0.2, 1].map((radius) => ({ radius, chord: 0.15, angle: -0.4 }));
  const run = propellerAt({ propeller: { ...propellerOf(10, 6, "thin"), stations }, rotation: 600, speed: 0, air });
  expect(run.thrust).toBeLessThan(0);
  expect(run.power).toBeGreaterThan(0);
  expect(run.figureOfMerit).toBe(0);
});
