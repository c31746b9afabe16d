import fc from "fast-check";
import { expect, it } from "vitest";
import { bracketedRoot } from "../../../server/compute/root";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it("finds the root of any rising cubic in its bracket, quickly", () => {
  fc.assert(fc.property(number(-5, 5), number(0, 3), number(0, 3), (root, a, b) => {
    let calls = 0;
    const f = (x: number) => {
      calls++;
      return (x - root) * (1 + a * (x - root) ** 2 + b);
    };
    expect(Math.abs(bracketedRoot(f, -6, 6, 1e-9)! - root)).toBeLessThan(2e-9); // the tolerance asked for, either side
    expect(calls).toBeLessThan(60); // halving alone takes 36
  }));
});

it("takes a bracket either way round, and an end that is the root", () => {
  expect(bracketedRoot((x) => x - 1, 3, 0, 1e-9)).toBeCloseTo(1, 8);
  expect(bracketedRoot((x) => x, 0, 1, 1e-9)).toBe(0);
  expect(bracketedRoot((x) => x - 1, 0, 1, 1e-9)).toBe(1);
});

it("has none without a change of sign", () => {
  expect(bracketedRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined();
  expect(bracketedRoot(() => Number.NaN, -1, 1, 1e-9)).toBeUndefined();
});
