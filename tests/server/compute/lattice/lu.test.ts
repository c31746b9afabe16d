import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { loadKernel } from "../../../../server/compute/lattice/dense/kernel";
import { Workspace } from "../../../../server/compute/lattice/dense/fast";
import { factorPlainly } from "../../../../server/compute/lattice/dense/plain";
import { factorSteps, solveFactored, type Factored } from "../../../../server/compute/lattice/lu";
import { finished } from "../finished";
import { conditioned, random, residualBound, residual, times } from "./matrices";

const fast = new Workspace(loadKernel()!);

type Factor = (values: Float64Array, size: number) => Generator<void, Factored | undefined>;
const ways: readonly (readonly [string, Factor])[] = [
  ["in WebAssembly", function* (values, size) {
    const order = yield* fast.factor(values, size);
    if (order === false) throw new Error("no room");
    return order && { size, values, order };
  }],
  ["plainly", function* (values, size) {
    const order = yield* factorPlainly(values, size);
    return order && { size, values, order };
  }],
  ["by whichever is there", factorSteps],
];

describe.each(ways)("LU %s", (_, factor) => {
  const solved = (matrix: Float64Array, size: number, right: Float64Array): Float64Array =>
    solveFactored(finished(factor(matrix.slice(), size))!, right);

  it("leaves residuals of rounding only, of any size", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 70 }), fc.integer(), (size, seed) => {
      const [matrix, right] = [random(size * size, seed), random(size, seed + 1)];
      const factored = finished(factor(matrix.slice(), size))!;
      const x = solveFactored(factored, right);
      expect(residual(matrix, size, x, right)).toBeLessThan(residualBound(factored, matrix, x));
    }), { numRuns: 300 });
  });

  it.each([127, 128, 129, 255, 331, 517])("and of %i unknowns", (size) => {
    const [matrix, right] = [random(size * size, size), random(size, 7)];
    const factored = finished(factor(matrix.slice(), size))!;
    const x = solveFactored(factored, right);
    expect(residual(matrix, size, x, right)).toBeLessThan(residualBound(factored, matrix, x));
  });

  it.each([1e4, 1e8, 1e12, 1e13])("of matrices of condition %d", (condition) => {
    for (const size of [5, 33, 70]) {
      const [matrix, right] = [conditioned(size, condition, size), random(size, 3)];
      const factored = finished(factor(matrix.slice(), size))!;
      const x = solveFactored(factored, right);
      expect(residual(matrix, size, x, right)).toBeLessThan(residualBound(factored, matrix, x));
    }
  });

  it("gives L and U whose product is the matrix with its rows in order, no multiplier above 1", () => {
    for (const size of [1, 3, 4, 31, 32, 33, 36, 61, 65]) {
      const matrix = random(size * size, size);
      const { values, order } = finished(factor(matrix.slice(), size))!;
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: size }, (_each, i) => i));
      let [off, largest] = [0, 0];
      for (let i = 0; i < size; i++) {
        for (let j = 0; j < size; j++) {
          let sum = 0;
          for (let k = 0; k <= Math.min(i, j); k++) sum += (k === i ? 1 : values[i * size + k]) * values[k * size + j];
          off = Math.max(off, Math.abs(sum - matrix[order[i] * size + j]));
          if (j < i) largest = Math.max(largest, Math.abs(values[i * size + j]));
        }
      }
      // Sums of at most 65 products of numbers near 1, rounded to 1.1e-16 each; a quotient by a larger number, rounded.
      expect(off).toBeLessThan(1e-13);
      expect(largest).toBeLessThanOrEqual(1 + 2.3e-16);
    }
  });

  it("takes rows in any order, and matrices of any scale", () => {
    // Powers of two: these solutions are exact.
    for (const scale of [2 ** -500, 1, 2 ** 500]) {
      const size = 45;
      // Each row has but one entry, one column on: every column needs an exchange.
      const matrix = Float64Array.from({ length: size * size }, (_each, i) => (i % size === (Math.floor(i / size) + 1) % size ? scale : 0));
      const wanted = random(size, 5);
      expect(solved(matrix, size, times(matrix, size, wanted))).toEqual(wanted);
    }
  });

  it("says so when a matrix is singular or no matrix", () => {
    const none = (values: Float64Array, size: number) => expect(finished(factor(values, size))).toBeUndefined();
    none(Float64Array.of(1, 2, 2, 4), 2);
    none(new Float64Array(25), 5);
    none(Float64Array.of(1, 2, Number.NaN, 4), 2);
    none(Float64Array.of(1, 2, Number.POSITIVE_INFINITY, 4), 2);
    for (const size of [6, 40, 70, 131]) {
      const last = random(size * size, size);
      last.copyWithin((size - 1) * size, 0, size);
      none(last, size);
      const column = random(size * size, size);
      for (let i = 0; i < size; i++) column[i * size + Math.floor(size / 2)] = 0;
      none(column, size);
      const broken = random(size * size, size);
      broken[size * size - 1] = Number.NaN;
      none(broken, size);
    }
  });

  it("gives way in stretches", () => {
    const size = 500;
    let pauses = 0;
    for (const steps = factor(random(size * size, 1), size); !steps.next().done;) pauses++;
    // 42 million multiplications: no stretch of more than some 12 million, a few milliseconds.
    expect(pauses).toBeGreaterThanOrEqual(3);
  });

  it("keeps many at a time apart, of sizes that make the memory grow, some given up", () => {
    const sizes = [300, 450, 310, 700, 350];
    const matrices = sizes.map((size) => random(size * size, size));
    const rights = sizes.map((size) => random(size, size + 1));
    const running = sizes.map((size, i) => ({ i, steps: factor(matrices[i].slice(), size), given: i === 2 || i === 3 }));
    const done = new Map<number, Factored>();
    for (let round = 0; running.length > 0; round++) {
      for (const each of [...running]) {
        const step = each.steps.next();
        if (each.given && round === 1) {
          if (each.i === 2) each.steps.return(undefined);
          running.splice(running.indexOf(each), 1);
        } else if (step.done) {
          done.set(each.i, step.value!);
          running.splice(running.indexOf(each), 1);
        }
      }
    }
    expect([...done.keys()].sort()).toEqual([0, 1, 4]);
    for (const [i, factored] of done) {
      const x = solveFactored(factored, rights[i]);
      expect(residual(matrices[i], sizes[i], x, rights[i])).toBeLessThan(residualBound(factored, matrices[i], x));
    }
  });

  it("leaves the array of a factoring that was given up alone", () => {
    const size = 400;
    const first = random(size * size, 1);
    const steps = factor(first, size);
    steps.next();
    first.fill(7);
    finished(factor(random(900 * 900, 2), 900));
    expect(first.every((value) => value === 7)).toBe(true);
  });
});

describe("LU both ways", () => {
  it("chooses the same rows and comes to the same numbers to rounding", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 70 }), fc.integer(), (size, seed) => {
      const matrix = random(size * size, seed);
      const [a, b] = [matrix.slice(), matrix.slice()];
      expect(finished(fast.factor(a, size))).toEqual(finished(factorPlainly(b, size)));
      // Entries of U are sums of up to 70 products, rounded to 1.1e-16 each and somewhat grown; those of L are over a pivot.
      const least = Math.min(1, ...Array.from({ length: size }, (_, i) => Math.abs(b[i * (size + 1)])));
      expect(Math.max(...a.map((value, i) => Math.abs(value - b[i])))).toBeLessThan(1e-12 / least);
    }), { numRuns: 200 });
  });
});

describe("without WebAssembly", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  class Refused {
    constructor() {
      throw new Error("no vectors here");
    }
  }

  it.each([["missing", undefined], ["without vectors", { Module: Refused, Instance: Refused }]])("%s, factors plainly", async (_, there) => {
    vi.stubGlobal("WebAssembly", there);
    vi.resetModules();
    const { sharedWorkspace } = await import("../../../../server/compute/lattice/dense/fast");
    const lu = await import("../../../../server/compute/lattice/lu");
    expect(sharedWorkspace()).toBeUndefined();
    const [matrix, wanted] = [random(37 * 37, 1), random(37, 2)];
    const x = lu.solveFactored(finished(lu.factorSteps(matrix.slice(), 37))!, times(matrix, 37, wanted));
    x.forEach((value, i) => expect(value).toBeCloseTo(wanted[i], 10));
  });

  it("is used here, where it is there", async () => {
    const { sharedWorkspace } = await import("../../../../server/compute/lattice/dense/fast");
    expect(sharedWorkspace()).toBeInstanceOf(Object);
  });
});
