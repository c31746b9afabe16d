import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { neutralPoint, neutralPointSteps } from "../../../../server/compute/stability/neutral-point";
import { bodyMomentSlope } from "../../../../server/compute/stability/body-moment";
import { coveredBy } from "../../../../server/compute/stability/covered";
import { fuselage, mirrored, moved, movedBodies, single, tapered } from "../airframes";
import { conventionalWing, designs, tailAt } from "../designs";
import { finished } from "../finished";

const all = Object.entries(designs);

describe("neutral point", () => {
  it.each(all)("%s: moves with the design, and grows with it", (_, { surfaces, bodies }) => {
    const here = neutralPoint({ surfaces, bodies })!;
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (dx, dz) => {
      const there = neutralPoint({ surfaces: moved(surfaces, [dx, 0, dz]), bodies: movedBodies(bodies, [dx, 0, dz]) })!;
      // 1e-6 chords: sums of differences of coordinates.
      expect(Math.abs(there.x - here.x - dx) / here.reference.meanChord).toBeLessThan(1e-6);
      expect(there.liftSlope).toBeCloseTo(here.liftSlope, 6);
    }), { numRuns: 3 });
    fc.assert(fc.property(fc.double({ min: 0.05, max: 20, noNaN: true }), (factor) => {
      const grown = neutralPoint({ surfaces: moved(surfaces, [0, 0, 0], factor), bodies: movedBodies(bodies, [0, 0, 0], factor) })!;
      expect(grown.reference.area / here.reference.area / factor ** 2).toBeCloseTo(1, 9);
      expect(grown.x / factor).toBeCloseTo(here.x, 6);
      expect(grown.liftSlope).toBeCloseTo(here.liftSlope, 6);
      expect(grown.momentSlope).toBeCloseTo(here.momentSlope, 6);
    }), { numRuns: 3 });
  });

  it("a body ahead of the wing moves it forward, and more the longer it is", () => {
    const surfaces = [conventionalWing, tailAt(0.04)];
    const nose = (length: number) => fuselage([0.165 - length, 0, 0.05], [[0, 0.05, 0.05], [length + 0.3, 0.08, 0.08]]);
    const bare = neutralPoint({ surfaces, bodies: [] })!;
    const short = neutralPoint({ surfaces, bodies: [nose(0.2)] })!;
    const long = neutralPoint({ surfaces, bodies: [nose(0.4)] })!;
    expect(bare.x).toBe(bare.surfacesX);
    expect(bare.bodies).toEqual([]);
    expect(short.x).toBeLessThan(bare.x);
    expect(long.x).toBeLessThan(short.x);
    expect(short.liftSlope).toBe(bare.liftSlope);
    expect(short.x).toBeCloseTo(bare.x - (short.bodies[0].momentSlope / short.liftSlope) * short.reference.meanChord, 12);
  });

  it("a body far from any wing has its moment in free flow", () => {
    const body = fuselage([0, 0, 40], [[0, 0.01, 0.01], [0.3, 0.1, 0.1], [1, 0.01, 0.01]]);
    const found = neutralPoint({ surfaces: [conventionalWing], bodies: [body] })!;
    const free = bodyMomentSlope(body) / (found.reference.area * found.reference.meanChord);
    expect(found.bodies[0].momentSlope / free).toBeCloseTo(1, 3); // what is left of the wing's downwash 40 m away
  });

  it("a surface that crosses a body covers its chord; one well above does not", () => {
    const body = fuselage([0, 0, 0], [[0, 0.1, 0.1], [1, 0.1, 0.1]]);
    expect(coveredBy(body, [mirrored([[0.3, 0, 0.04, 0.2], [0.3, 0.5, 0.04, 0.2]])], [body])).toContainEqual([0.3, 0.5]);
    expect(coveredBy(body, [mirrored([[0.3, 0.05, 0.04, 0.2], [0.3, 0.5, 0.04, 0.2]])], [body])).toContainEqual([0.3, 0.5]);
    expect(coveredBy(body, [mirrored([[0.3, 0, 0.2, 0.2], [0.3, 0.5, 0.2, 0.2]])], [body])).toEqual([]);
  });

  it("is the same in steps, and can be given up between", () => {
    const { surfaces, bodies } = designs.conventional;
    const steps = neutralPointSteps({ surfaces, bodies });
    expect(steps.next().done).toBe(false);
    steps.return(undefined);
    expect(finished(neutralPointSteps({ surfaces, bodies }))!.x).toBe(neutralPoint({ surfaces, bodies })!.x);
  });

  it("is undefined without a wing or without area", () => {
    expect(neutralPoint({ surfaces: [], bodies: [] })).toBeUndefined();
    expect(neutralPoint({ surfaces: [tailAt(0)], bodies: [] })).toBeUndefined();
    expect(neutralPoint({ surfaces: [tapered(1, 0, 0, 0)], bodies: [] })).toBeUndefined();
    expect(neutralPoint({ surfaces: [single([[0, 0, 0, 0.2], [0, 0, 1, 0.2]])], bodies: [] })).toBeUndefined();
  });

  it("knows bodies without size", () => {
    const nothing = fuselage([0, 0, 0], [[0, 0, 0], [0, 0, 0]]);
    expect(neutralPoint({ surfaces: [conventionalWing], bodies: [nothing] })!.bodies[0].momentSlope).toBe(0);
  });
});
