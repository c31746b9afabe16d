import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factorSteps, solveFactored } from "../../../../server/compute/lattice/lu";
import { finished } from "../finished";

const matrix = (size: number) => fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: size * size, maxLength: size * size });

describe("LU", () => {
  it("solves what it is given, of any size", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 23 }).chain((size) => fc.tuple(fc.constant(size), matrix(size))), ([size, entries]) => {
      // A strong diagonal, moved one column on so that rows must be exchanged.
      const values = Float64Array.from(entries);
      for (let i = 0; i < size; i++) values[i * size + ((i + 1) % size)] += 2 * size;
      const wanted = Array.from({ length: size }, (_, i) => i - size / 3);
      const right = wanted.map((_, i) => wanted.reduce((sum, x, k) => sum + values[i * size + k] * x, 0));
      const x = solveFactored(finished(factorSteps(values, size))!, right);
      x.forEach((value, i) => expect(value).toBeCloseTo(wanted[i], 9));
    }));
  });

  it("says so when a matrix is singular or no matrix", () => {
    expect(finished(factorSteps(Float64Array.of(1, 2, 2, 4), 2))).toBeUndefined();
    expect(finished(factorSteps(new Float64Array(25), 5))).toBeUndefined();
    expect(finished(factorSteps(Float64Array.of(1, 2, Number.NaN, 4), 2))).toBeUndefined();
  });

  it("gives way in stretches", () => {
    const size = 500;
    const values = Float64Array.from({ length: size * size }, (_, i) => (i % (size + 1) === 0 ? size : Math.sin(i)));
    let pauses = 0;
    for (const steps = factorSteps(values, size); !steps.next().done;) pauses++;
    expect(pauses).toBeGreaterThan(5);
  });
});
