import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { bladeOf } from "../../../../server/compute/propeller/blade";
import { bladeLoad, propellerAt } from "../../../../server/compute/propeller/propeller-at";
import { propellerMap } from "../../../../server/compute/propeller/propeller-map";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { anyAir, anyPropeller, anyStations, anyTipSpeed } from "./arbitrary";

const air = atmosphere({ altitude: 0 })!;
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("against a solution of its own for each running point", () => {
  const errors = (propeller: Parameters<typeof propellerMap>[0], tipSpeed: number, advance: number, place = air) => {
    const rotation = (2 * tipSpeed) / propeller.diameter;
    const blade = bladeOf(propeller);
    const speed = (advance * rotation * propeller.diameter) / (2 * Math.PI);
    const [still, direct] = [0, speed].map((v) => bladeLoad(blade, rotation, v, place));
    const found = propellerMap(propeller).at({ rotation, speed, air: place });
    const over = (key: "thrustCoefficient" | "powerCoefficient") =>
      Math.abs(found[key] - direct[key]) / Math.max(Math.abs(still[key]), Math.abs(direct[key]));
    return Math.max(over("thrustCoefficient"), over("powerCoefficient"));
  };

  it("pulling, windmilling a little: within 0.5 % of what it does standing still", () => {
    fc.assert(fc.property(anyPropeller, double(8, 330), double(0, 1.3), anyAir, (propeller, tipSpeed, share, place) => {
      const zero = 0.15 + propeller.pitch / propeller.diameter;
      expect(errors(propeller, tipSpeed, share * zero, place)).toBeLessThan(0.005);
    }), { numRuns: 300, seed: 1_912 });
  });

  it("braking, up to blades that hardly turn: within 0.6 % of that or of itself, whichever is more", () => {
    // Nothing rests on more there: the sections of a stalled windmill are guesses.
    fc.assert(fc.property(anyPropeller, double(8, 160), double(0.4, 7), (propeller, tipSpeed, power) => {
      expect(errors(propeller, tipSpeed, Math.exp(power))).toBeLessThan(0.006);
    }), { numRuns: 200, seed: 1_912 });
  });
});

it("cannot jump: value and slope run through its points", () => {
  const [propeller, hair] = [propellerOf(11, 6, "thin"), 1e-6];
  const map = propellerMap(propeller);
  fc.assert(fc.property(double(5, 40), double(200, 1500), (speed, rotation) => {
    const [before, at, after] = [-1, 0, 1].map((i) => map.at({ rotation: rotation * (1 + i * hair), speed, air }).thrust);
    const scale = Math.abs(at) + 0.01;
    expect(Math.abs(after - at)).toBeLessThan(1e-3 * scale);
    expect(Math.abs(after - 2 * at + before)).toBeLessThan(1e-8 * scale);
  }), { numRuns: 200, seed: 1_912 });
});

it("holds in any air: the same at the same Reynolds number", () => {
  const map = propellerMap(propellerOf(11, 6, "thick"));
  const place = { ...air, density: 2 * air.density, viscosity: 2 * air.viscosity };
  const [here, there] = [air, place].map((each) => map.at({ rotation: 700, speed: 12, air: each }));
  expectNear(there.thrustCoefficient, here.thrustCoefficient, 1e-12);
  expectNear(there.thrust, 2 * here.thrust, 1e-12);
});

it("keeps its coefficients below and above the Reynolds numbers it holds, and gives the wind alone", () => {
  const propeller = propellerOf(10, 6, "wide");
  const map = propellerMap(propeller);
  const coefficient = (rotation: number) => map.at({ rotation, speed: 0, air }).thrustCoefficient;
  expectNear(coefficient(1e-3), coefficient(1e-2), 1e-9);
  expectNear(coefficient(1e5), coefficient(2e5), 1e-9);
  const stopped = map.at({ rotation: 1e-6, speed: 15, air });
  expectNear(stopped.thrust, propellerAt({ propeller, rotation: 1e-6, speed: 15, air }).thrust, 0.001); // the Reynolds step's
});

it("blades of any stations have a finite load at any airspeed", () => {
  fc.assert(fc.property(anyStations, anyTipSpeed, double(0, 200), (propeller, tipSpeed, speed) => {
    const load = propellerMap(propeller).at({ rotation: (2 * tipSpeed) / propeller.diameter, speed, air });
    expect([load.thrust, load.torque, load.efficiency].every(Number.isFinite)).toBe(true);
  }), { numRuns: 200, seed: 1_912 });
});
