import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { add, divide, halfWidth, multiply, type Quantity } from "../../../../grammar/units/quantity";
import { propagate } from "../../../../server/compute/tolerance/propagate";
import { q } from "../mass/quantities";

describe("propagation of tolerances", () => {
  it("sums and products agree with the arithmetic of quantities", () => {
    const value = fc.double({ min: 0.5, max: 2, noNaN: true });
    const shares = fc.dictionary(fc.constantFrom("u", "v", "w"), fc.double({ min: -1e-3, max: 1e-3, noNaN: true }));
    const any = fc.tuple(value, shares).map(([x, s]) => q(x, "ratio", s));
    fc.assert(fc.property(any, any, (a, b) => {
      const found = propagate({ a, b }, (s) => ({ sum: s.a + s.b, product: s.a * s.b, quotient: s.a / s.b }));
      const exact: Record<string, Quantity> = { sum: add(a, b), product: multiply(a, b), quotient: divide(a, b) };
      for (const key of ["sum", "product", "quotient"] as const) {
        expect(found[key]?.value).toBeCloseTo(exact[key].value, 12);
        // The quotient's third order: (1e-3)³ with values down to 0.5.
        expect(Math.abs(Math.hypot(...found[key]!.spread.values()) - halfWidth(exact[key]))).toBeLessThan(1e-7);
      }
    }));
  });

  it("quantities of one variable move together", () => {
    const model = { a: q(3, "ratio", { t: 0.1 }), b: q(2, "ratio", { t: 0.1 }), c: q(2, "ratio", { own: 0.1 }) };
    const found = propagate(model, (s) => ({ together: s.a - s.b, apart: s.a - s.c }));
    expect(Math.hypot(...found.together!.spread.values())).toBe(0);
    expect(Math.hypot(...found.apart!.spread.values())).toBeCloseTo(Math.SQRT2 * 0.1, 12);
  });

  it("a figure missing at one end takes the other's difference; missing at both, none", () => {
    const model = { a: q(1, "ratio", { t: 0.1 }) };
    const found = propagate(model, ({ a }): { up?: number; down?: number; middle?: number } => ({
      ...(a <= 1 ? { down: a } : {}), ...(a >= 1 ? { up: 2 * a } : { up: NaN }), ...(a === 1 ? { middle: 5 } : {}),
    }));
    expect(found.down?.spread.get("t")).toBeCloseTo(0.1, 12);
    expect(found.up?.spread.get("t")).toBeCloseTo(0.2, 12);
    expect(found.middle).toEqual({ value: 5, spread: new Map() });
  });

  it("calls the function once for the middle and twice for each variable", () => {
    let calls = 0;
    propagate({ a: q(1, "ratio", { s: 1, t: 1 }), b: q(1, "ratio", { t: 1 }) }, () => ({ n: calls++ }));
    expect(calls).toBe(5);
  });
});
