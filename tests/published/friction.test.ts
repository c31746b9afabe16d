import { describe, expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { bodyDrag } from "../../server/compute/drag/body";
import { cylinderDrag } from "../../server/compute/drag/cylinder";
import { bodyForm, sectionForm } from "../../server/compute/drag/form";
import { laminarFriction, plateFriction, roughFriction, turbulentFriction } from "../../server/compute/drag/friction";
import { wheelDrag } from "../../server/compute/drag/gear";
import { memberDrag, strutDrag } from "../../server/compute/drag/member";
import { fuselage } from "../server/compute/airframes";
import { expectNear } from "./near";

/** Printed digits of a closed formula. */
const digits = 1e-3;
const air = atmosphere({ altitude: 0 })!;

describe("friction of a plate, one side", () => {
  // Blasius, and Prandtl and Schlichting: H. Schlichting, Boundary-Layer Theory.
  it.each([[1e5, 0.0041995], [2e5, 0.0029695], [5e5, 0.0018781]])("laminar at %d", (reynolds, value) => {
    expectNear(laminarFriction(reynolds), value, digits);
    expectNear(plateFriction(reynolds, { transition: 5e5 }), value, digits);
  });
  it.each([[1e5, 0.007156], [5e5, 0.005106], [1e6, 0.004471], [1e7, 0.003004]])("turbulent at %d", (reynolds, value) => {
    expectNear(turbulentFriction(reynolds), value, digits);
    expectNear(plateFriction(reynolds, { transition: 0 }), value, digits);
  });
  it("laminar up to 500,000: less 1614/Re, by which both join without a step", () => {
    // The printed A, from memory, is 1700, rounded; the difference is put back to hold the rest to the printed values.
    expectNear((turbulentFriction(2e6) - plateFriction(2e6, { transition: 5e5 })) * 2e6, 1614, digits);
    expectNear(plateFriction(1e6, { transition: 5e5 }) - (1700 - 1614) / 1e6, 0.002771, digits);
    expectNear(plateFriction(2e6, { transition: 5e5 }) - (1700 - 1614) / 2e6, 0.00309, digits);
    expectNear(plateFriction(5.001e5, { transition: 5e5 }), laminarFriction(5e5), 2e-3);
  });
  // K. E. Schoenherr, 0.242/√Cf = log10(Re Cf): a law of its own, 1.5 and 2.5 % from that of Prandtl and Schlichting.
  it.each([[1e6, 0.004409, 0.015], [1e7, 0.002934, 0.025]])("Schoenherr's line at %d", (reynolds, value, share) => {
    expectNear(turbulentFriction(reynolds), value, share);
  });
  // J. D. Anderson, Fundamentals of Aerodynamics, ex. 4.7 to 4.10: a chord of 1.5 m at 3,100,000, both sides. He takes
  // turbulent friction from 0.074/Re^0.2, here 2 % more than the logarithmic law.
  it.each([["laminar", 4e6, 0.001509, digits], ["turbulent", 0, 0.007447, 0.025], ["laminar to 500,000", 5e5, 0.006323, 0.025], ["laminar to 1,000,000", 1e6, 0.005292, 0.025]])(
    "%s", (_, transition, value, share) => {
      expectNear(2 * plateFriction(3.1e6, { transition }), value, share);
    });
});

describe("friction of a rough plate", () => {
  it("is that of a smooth one where sand is as high as Schlichting admits: speed × height / viscosity of 100", () => {
    // The two laws meet there without the bend of real sand: rough is above, by a sixth at 200,000 and less from there on.
    for (const [reynolds, share] of [[2e5, 0.16], [1e6, 0.11], [1e7, 0.06]]) expectNear(roughFriction(reynolds / 100), turbulentFriction(reynolds), share);
  });
  it("does not depend on speed, and is never less than smooth", () => {
    expect(plateFriction(1e7, { transition: 0, lengthBySand: 1000 })).toBeCloseTo(plateFriction(2e7, { transition: 0, lengthBySand: 1000 }), 12);
    expect(plateFriction(1e6, { transition: 0, lengthBySand: 1e6 })).toBe(turbulentFriction(1e6));
  });
});

describe("form", () => {
  // S. F. Hoerner, Fluid-Dynamic Drag, ch. 6 (from memory).
  it("Hoerner's factors", () => {
    expectNear(sectionForm(0.12), 1.2524, digits);
    expectNear(bodyForm(6), 1.1345, digits);
    expectNear(bodyForm(8), 1.08, digits);
  });
  it("Raymer's for a body of fineness 6, 1.2928, is 14 % more, that of 8 5 % more: blunt ends are in it", () => {
    expectNear(1.2928 / bodyForm(6), 1.14, 5e-3);
    expectNear(1.1372 / bodyForm(8), 1.053, 5e-3);
  });
});

describe("bluff things", () => {
  // Marks' Standard Handbook for Mechanical Engineers; its values are rounded to the hundredth and taken at Reynolds numbers it
  // does not give: 10 %. Cups, spheres, plates of great length and cylinders with free ends are no part of a design here.
  it.each([1e4, 5e4, 1e5, 2e5])("a long cylinder across the flow at %d: 1.20", (reynolds) => expectNear(cylinderDrag(reynolds), 1.2, 0.1));
  // Hoerner, ch. 3 (from memory): 1.0 to 1.2.
  it.each([1e3, 3e3, 1e4, 3e4, 1e5])("a wire at %d: 1.1 ± 0.1", (reynolds) => {
    expect(cylinderDrag(reynolds)).toBeGreaterThanOrEqual(1);
    expect(cylinderDrag(reynolds)).toBeLessThanOrEqual(1.2 + 1e-9);
  });
  it("a body without length is a plate across the flow: 1.17", () => {
    const disc = fuselage([0, 0, 0], [[0, 0.1, 0.1], [1e-6, 0.1, 0.1]]);
    expectNear(bodyDrag(disc, { bodies: [disc], surfaces: [], powerplants: [] })({ speed: 15, air }).area, 1.17 * 0.1 ** 2 * (Math.PI / 4), digits);
  });
  it("an open wheel that turns, 0.28 of its diameter wide: 0.58 on its frontal area", () => {
    const wheel = { path: "w", kind: "wheel", contact: [0, 0, 0], diameter: 0.07, steer: false } as const;
    expectNear(wheelDrag(wheel, [])({ speed: 15, air }).area, 0.58 * 0.07 * 0.28 * 0.07, digits);
  });
  it("a streamlined strut of full size: 0.05 on its frontal area", () => {
    // D. P. Raymer, Aircraft Design, table 12.6 (from memory, medium), thickness 1/6 to 1/3: 30 %. Full size: Re 500,000 and 1,000,000.
    for (const reynolds of [5e5, 1e6]) expectNear(strutDrag(reynolds, 0.25) / 0.25, 0.05, 0.3);
  });
  it("a wire of 1 mm and 0.5 m at 20 m/s: 0.1348 N at a coefficient of 1.1", () => {
    // The curve reads 1.01 at Re 1369, within the 0.1 that the handbook leaves; the flow along the wire adds 0.02.
    const q = 0.5 * 1.225 * 20 ** 2;
    const { area } = memberDrag({ path: "w", kind: "wire", start: [0, 0, 0], end: [0, 0.5, 0], diameter: 0.001 })({ speed: 20, air });
    expectNear(q * area, 0.1348, 0.1 / 1.1);
  });
});
