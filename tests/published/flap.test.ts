import { describe, expect, it } from "vitest";
import { flapEffectiveness, flapped, flapTheory } from "../../server/compute/section-air/flapped";
import { plateFriction } from "../../server/compute/section-air/plate";
import { sectionsAir } from "../../server/compute/section-air/sections-air";
import type { Section } from "../../server/model/design/geometry";

const degree = Math.PI / 180;
const airs = sectionsAir(() => "none");
const plate: Section = { shape: { type: "flat", thickness: 0.03 } };
const air = airs(plate, 1e6)!;

// H. Glauert, ARC R&M 1095, 1927: a flap on a thin section, by its share of the chord; derived in closed form and by a vortex sheet of
// 1600 panels. Turn of the angle of no lift, lift per radian at a constant angle, moment per radian about the quarter chord.
describe.each([
  [0.1, 0.39582, 2.487, -0.54], [0.15, 0.4805, 3.01908, -0.60702], [0.2, 0.54982, 3.45459, -0.64], [0.25, 0.609, 3.82645, -0.64952],
  [0.3, 0.66075, 4.15159, -0.64156], [0.35, 0.70666, 4.44009, -0.62006], [0.4, 0.74778, 4.69847, -0.58788], [0.5, 0.81831, 5.14159, -0.5],
])("a flap of %d of the chord", (chordShare, effect, lift, moment) => {
  // The table has five decimals.
  const digits = 4;
  it("is the theory's", () => {
    const found = flapTheory(chordShare);
    expect(found.effect).toBeCloseTo(effect, digits);
    expect(2 * Math.PI * found.effect).toBeCloseTo(lift, digits);
    expect(found.moment).toBeCloseTo(moment, digits);
  });
  it("does by its effectiveness less", () => {
    const deflection = 5 * degree;
    const real = flapped(air, { chordShare, deflection });
    expect(-real.zeroLiftAngle / deflection / effect).toBeCloseTo(flapEffectiveness(deflection), digits);
    expect(real.moment / deflection / moment).toBeCloseTo(flapEffectiveness(deflection), digits);
  });
});

it("at its ends a flap is none, or the whole section", () => {
  expect(flapTheory(0)).toMatchObject({ effect: 0 });
  expect(flapTheory(1).effect).toBeCloseTo(1, 12);
  expect(flapTheory(1).moment).toBeCloseTo(0, 12);
});

// Measured plain flaps with sealed gaps, handbook trend from memory (medium): 0.85 to 0.95 of the theory at small deflections,
// 0.5 to 0.6 beyond 20 deg; between, 0.6 to 0.85.
it.each([[0, 0.85, 0.95], [8, 0.85, 0.95], [20, 0.6, 0.85], [30, 0.5, 0.6], [45, 0.5, 0.6]])("a flap turned %d deg reaches its share", (angle, low, high) => {
  expect(flapEffectiveness(angle * degree)).toBeGreaterThanOrEqual(low);
  expect(flapEffectiveness(angle * degree)).toBeLessThanOrEqual(high);
  expect(flapEffectiveness(-angle * degree)).toBe(flapEffectiveness(angle * degree));
});

describe("a plain flap of a quarter of the chord", () => {
  const gain = (reynolds: number, angle: number) => {
    const plain = airs(plate, reynolds)!;
    return flapped(plain, { chordShare: 0.25, deflection: angle * degree }).liftMax - plain.liftMax;
  };
  // Handbook trend, from memory (medium): 0.4 to 0.6 more at 30 to 40 deg, less at small Reynolds numbers.
  it("raises the lift limit as handbooks say", () => {
    for (const angle of [30, 35, 40]) {
      expect(gain(1e6, angle)).toBeGreaterThan(0.4);
      expect(gain(1e6, angle)).toBeLessThan(0.6);
      expect(gain(1e5, angle)).toBeLessThan(0.85 * gain(1e6, angle));
      expect(gain(1e5, angle)).toBeGreaterThan(0.25);
    }
    expect(gain(1e6, -30)).toBeLessThan(-0.3);
  });
  // B. W. McCormick, Aerodynamics, Aeronautics and Flight Mechanics, ch. 4, from memory (high): 1.7 × 0.25^1.38 × sin² 30 deg.
  it("costs the drag of the formula", () => {
    const down = flapped(air, { chordShare: 0.25, deflection: 30 * degree });
    const shift = down.liftMax - air.liftMax;
    expect(down.drag(0.4 + shift) - air.drag(0.4)).toBeCloseTo(0.0627, 3);
  });
  it("turned up on a symmetric section is turned down on its back", () => {
    const [down, up] = [15, -15].map((angle) => flapped(air, { chordShare: 0.25, deflection: angle * degree }));
    expect(up.liftMin).toBeCloseTo(-down.liftMax, 12);
    expect(up.zeroLiftAngle).toBeCloseTo(-down.zeroLiftAngle, 12);
    expect(up.drag(-0.3)).toBeCloseTo(down.drag(0.3), 12);
  });
});

// Boundary-layer theory (H. Blasius; L. Prandtl and H. Schlichting), friction of one side.
it.each([[1e5, 0.0041995], [2e5, 0.0029695], [5e5, 0.0018781], [1e6, 0.002771], [2e6, 0.00309]])("a plate at %d has the friction of theory", (reynolds, friction) => {
  // Four figures are given.
  expect(Math.abs(plateFriction(reynolds) / friction - 1)).toBeLessThan(3e-4);
});

// Wings of flat plates with aspect ratios of 2 to 5 at 60,000 to 160,000 (G. Ananda, P. Sukumar, M. Selig, Aerospace Science and
// Technology 42, 2015, second hand): greatest lift of the wing 0.55 to 0.70, least drag 0.01 to 0.02. The section reaches more, as a
// wing does not stall everywhere at once: up to a fifth.
it.each([60e3, 100e3, 160e3])("a plate of 3 %% at %d is a little better than wings of plates", (reynolds) => {
  const { liftMax, liftMin, drag, zeroLiftAngle } = airs(plate, reynolds)!;
  expect(liftMax).toBeGreaterThan(0.7);
  expect(liftMax).toBeLessThan(0.84);
  expect([liftMin, zeroLiftAngle]).toEqual([-liftMax, 0]);
  expect(drag(0)).toBeGreaterThan(0.01);
  expect(drag(0)).toBeLessThan(0.02);
  // Without the suction of a nose, drag rises by more than lift² / 2π.
  expect(drag(0.5) - drag(0)).toBeGreaterThan(0.25 / (2 * Math.PI));
});
