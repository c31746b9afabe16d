import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import {
  deadPropellerDrag, foldedPropellerDrag, stoppedPropellerDrag, windmillFriction, windmillingPropeller,
} from "../../../../server/compute/drag/stopped-propeller";
import { propellerAt } from "../../../../server/compute/propeller/propeller-at";
import { propellerMap } from "../../../../server/compute/propeller/propeller-map";
import type { Motor, Propeller } from "../../../../server/model/design/power";

const air = atmosphere({ altitude: 0 })!;
const wind = { speed: 15, air };
const propeller: Propeller = { diameter: 0.2794, pitch: 0.1397, blades: 2, family: "thin", folding: false, clockwise: true };
const motor: Motor = { kv: 94, resistance: 0.042, noLoadCurrent: 1.2, gearRatio: 1 };

const any: fc.Arbitrary<Propeller> = fc.record({
  diameter: fc.double({ min: 0.1, max: 0.6, noNaN: true }), share: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
  blades: fc.integer({ min: 2, max: 4 }), family: fc.constantFrom("thin", "wide", "thick" as const),
}).map(({ diameter, share, blades, family }) => ({ ...propeller, diameter, pitch: share * diameter, blades, family }));

describe("drag of a propeller without drive", () => {
  it("still: more than folded, with each blade as much again, with the square of the diameter", () => {
    fc.assert(fc.property(any, (p) => {
      const area = stoppedPropellerDrag(p);
      expect(foldedPropellerDrag(p)).toBeLessThan(0.3 * area);
      expect(stoppedPropellerDrag({ ...p, blades: 2 * p.blades })).toBeCloseTo(2 * area, 12);
      // Thin blades get slimmer with size, so only others.
      if (p.family !== "thin") expect(stoppedPropellerDrag({ ...p, diameter: 2 * p.diameter, pitch: 2 * p.pitch }) / area).toBeCloseTo(4, 9);
    }));
  });

  it("turned: thrust and torque are the blade model's there, and friction is met", () => {
    const friction = windmillFriction(motor);
    // 1.2 A over 94 rad/s per volt: 12.8 N mm.
    expect(friction).toBeCloseTo(0.01277, 5);
    const { area, rotation } = windmillingPropeller(propeller, { ...wind, friction })!;
    const load = propellerMap(propeller).at({ rotation, ...wind });
    expect(load.torque).toBeCloseTo(-friction, 6);
    expect(load.thrust).toBeCloseTo(-area * 0.5 * air.density * 15 ** 2, 9);
    // The map is good to 0.5 %.
    expect(load.thrust / propellerAt({ propeller, rotation, ...wind }).thrust).toBeCloseTo(1, 2);
  });

  it("turned: no more power is taken from the air than A. Betz allows, 16/27 of that through the disc, and none by a free wheel", () => {
    fc.assert(fc.property(any, fc.double({ min: 5, max: 40, noNaN: true }), fc.double({ min: 0, max: 0.05, noNaN: true }), (p, speed, friction) => {
      const found = windmillingPropeller(p, { speed, air, friction });
      if (!found) return;
      const disc = (Math.PI * p.diameter ** 2) / 4;
      expect(found.area).toBeGreaterThan(0);
      // Braking disc of momentum theory: at most the whole of the dynamic pressure. Blades wide enough to exceed it would be a wall.
      expect(found.area).toBeLessThan(disc);
      expect(friction * found.rotation).toBeLessThan((16 / 27) * 0.5 * air.density * speed ** 3 * disc);
    }), { numRuns: 60 });
  });

  it("turned: all wheels that are free turn; one held fast, at rest or without pitch does not", () => {
    fc.assert(fc.property(any, (p) => void expect(windmillingPropeller(p, wind)).toBeDefined()), { numRuns: 40 });
    expect(windmillingPropeller(propeller, { ...wind, friction: 1 })).toBeUndefined();
    expect(windmillingPropeller(propeller, { speed: 0, air })).toBeUndefined();
    expect(windmillingPropeller({ ...propeller, pitch: 0 }, wind)).toBeUndefined();
  });

  it("goes by what the propeller does", () => {
    expect(deadPropellerDrag({ propeller, motor }, wind).how).toMatch(/turned/);
    expect(deadPropellerDrag({ propeller, motor: { ...motor, noLoadCurrent: 50 } }, wind)).toEqual({ area: stoppedPropellerDrag(propeller), how: expect.stringMatching(/still/) });
    const folding = { ...propeller, folding: true };
    expect(deadPropellerDrag({ propeller: folding, motor }, wind)).toEqual({ area: foldedPropellerDrag(folding), how: expect.stringMatching(/folded/) });
    expect(deadPropellerDrag({}, wind).area).toBe(0);
  });
});
