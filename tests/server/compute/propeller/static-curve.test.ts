import fc from "fast-check";
import { it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { propellerAt } from "../../../../server/compute/propeller/propeller-at";
import { staticCoefficients } from "../../../../server/compute/propeller/static-curve";
import { expectNear } from "../../../published/near";
import { propellerOf } from "../../../published/propeller-data";
import { anyAir, anyPropeller } from "./arbitrary";

it("is within 0.3 % of a direct solution between 8 and 330 m/s tip speed", () => {
  fc.assert(fc.property(anyPropeller, anyAir, fc.double({ min: 8, max: 330, noNaN: true }), (propeller, air, tipSpeed) => {
    const rotation = (2 * tipSpeed) / propeller.diameter;
    const [curve, direct] = [staticCoefficients(propeller, air).at(rotation), propellerAt({ propeller, rotation, speed: 0, air })];
    expectNear(curve.thrust, direct.thrust, 0.003);
    expectNear(curve.power, direct.power, 0.003);
  }), { numRuns: 200 });
});

it("keeps its coefficients below and above, and is finite at its own points", () => {
  const air = atmosphere({ altitude: 0 })!;
  const propeller = propellerOf(10, 6, "thin");
  const curve = staticCoefficients(propeller, air);
  const low = Math.log(16 / propeller.diameter);
  const high = Math.log(660 / propeller.diameter);
  expectNear(curve.at(1e-3).thrustCoefficient, curve.at(Math.exp(low)).thrustCoefficient, 1e-12);
  expectNear(curve.at(1e5).powerCoefficient, curve.at(Math.exp(high)).powerCoefficient, 1e-12);
  const point = Math.exp((low + high) / 2 + ((high - low) / 2) * Math.cos(Math.PI / 12));
  expectNear(curve.at(point).thrust, propellerAt({ propeller, rotation: point, speed: 0, air }).thrust, 1e-6);
});
