import { describe, expect, it } from "vitest";
import { camberSlopes, chordPlaces } from "../../../../server/compute/lattice/camber";
import { solveLattice } from "../../../../server/compute/lattice/solve-lattice";
import { nacaMeanLine } from "../../../../server/compute/section/naca";
import { thinSection } from "../../../../server/compute/section/thin-section";
import type { Section } from "../../../../server/model/design/geometry";
import { expectNear } from "../../../published/near";
import { mirrored } from "../airframes";

const naca = (digits: string): Section => ({ shape: { type: "naca", digits } });

/** Zero-lift angle and moment about the quarter chord of line vortices in plane flow. */
function planeLattice(slopes: Float64Array) {
  const { bound, control } = chordPlaces(slopes.length);
  const solve = (wash: ArrayLike<number>) => {
    // Gauss–Jordan on the few rows: Σ Γ/(2π (x − x_v)) = −wash
    const n = slopes.length;
    const rows = Array.from({ length: n }, (_, i) => [...Array.from(bound, (x) => -1 / (2 * Math.PI * (control[i] - x))), wash[i]]);
    for (let c = 0; c < n; c++) {
      const pivot = rows.slice(c).reduce((best, row, k) => (Math.abs(row[c]) > Math.abs(rows[best][c]) ? c + k : best), c);
      [rows[c], rows[pivot]] = [rows[pivot], rows[c]];
      for (let i = 0; i < n; i++) {
        if (i === c) continue;
        const factor = rows[i][c] / rows[c][c];
        for (let k = c; k <= n; k++) rows[i][k] -= factor * rows[c][k];
      }
    }
    const strength = rows.map((row, i) => row[n] / row[i]);
    const lift = strength.reduce((sum, value) => sum + 2 * value, 0);
    return { lift, moment: strength.reduce((sum, value, k) => sum - 2 * value * (bound[k] - 0.25), 0) };
  };
  const unit = solve(slopes.map(() => -1));
  const zero = solve(slopes);
  return { slope: unit.lift, angle: -zero.lift / unit.lift, moment: zero.moment, momentSlope: unit.moment };
}

describe("camber in the lattice", () => {
  it.each([4, 8, 11])("a plate in plane flow with %d rows: 2π about the quarter chord, exactly", (rows) => {
    const found = planeLattice(new Float64Array(rows));
    expect(found.slope).toBeCloseTo(2 * Math.PI, 10);
    expect(found.momentSlope).toBeCloseTo(0, 10);
  });

  it.each(["2412", "4412", "23012"])("%s has in plane flow the angle and moment of thin-section theory, with four rows as with eight", (digits) => {
    const wanted = thinSection(nacaMeanLine(digits)!);
    for (const rows of [4, 8]) {
      const found = planeLattice(camberSlopes(naca(digits), rows));
      expect(found.angle).toBeCloseTo(wanted.zeroLiftAngle, 10);
      expect(found.moment).toBeCloseTo(wanted.moment, 10);
    }
  });

  it("takes the angle and the moment a section overrides", () => {
    const found = planeLattice(camberSlopes({ ...naca("2412"), zeroLiftAngle: -0.05, moment: 0.01 }, 8));
    expect(found.angle).toBeCloseTo(-0.05, 10);
    expect(found.moment).toBeCloseTo(0.01, 10);
  });

  it("counts digits that are no section as flat", () => {
    expect([...camberSlopes(naca("29912"), 6)]).toEqual(new Array(6).fill(0));
  });

  it("an untwisted wing of one section lifts nothing near that section's angle, the nearer the longer it is", () => {
    const share = (aspectRatio: number) => {
      const found = solveLattice([mirrored([[0, 0, 0, 1], [0, aspectRatio / 2, 0, 1]], { shape: { type: "naca", digits: "4412" } })])!;
      return -found.zeroLift / found.liftSlope / thinSection(nacaMeanLine("4412")!).zeroLiftAngle - 1;
    };
    // At no lift fore and aft loads of a cambered section are opposite; the tips take part of that away, in proportion to the chord
    // over the span: 2.9 % at aspect ratio 8 (the same at every density). Half the aspect ratio, twice as much; 5 % for the next order.
    expect(share(8)).toBeGreaterThan(0);
    expect(share(8)).toBeLessThan(0.03);
    expectNear(share(32) / share(64), 2, 0.05);
  });

  it("incidence turns a wing as angle of attack does; washout takes lift away", () => {
    const at = (root: number, tip: number) => solveLattice([mirrored([[0, 0, 0, 0.2, root], [0, 0.8, 0, 0.2, tip]])])!;
    const set = at(0.04, 0.04);
    expect(set.zeroLift).toBeCloseTo(0.04 * set.liftSlope, 12);
    expect(at(0.04, 0).zeroLift).toBeLessThan(set.zeroLift);
  });
});
