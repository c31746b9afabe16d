import { expect } from "vitest";

/** Holds a computed value to a published one within a share of it (0.001: 0.1 %). */
export function expectNear(actual: number, published: number, share: number): void {
  expect(actual).toBeGreaterThanOrEqual(published - Math.abs(published) * share);
  expect(actual).toBeLessThanOrEqual(published + Math.abs(published) * share);
}
