import { describe, expect, it } from "vitest";
import { amplification } from "../../server/compute/polar/layer/amplification";
import { kindAfter, linear, linearise, type Mode } from "../../server/compute/polar/layer/jacobian";
import { laminarFriction, stagnationShape, stagnationThickness } from "../../server/compute/polar/layer/laminar";
import { fill, station, type Station } from "../../server/compute/polar/layer/station";
import { thwaitesIntegral, thwaitesShape, thwaitesTheta } from "../../server/compute/polar/layer/thwaites";
import { stressAtTransition, turbulentFriction } from "../../server/compute/polar/layer/turbulent";
import { expectNear } from "./near";

/** Where a plate's stations begin, as share of its length. */
const front = 0.005;

/** The layer along a plate in given speeds, from Blasius' layer at its front; station by station to `end` or until `stop`. */
function plate(speedAt: (place: number) => number, reynolds: number, critical: number, stop: (at: Station) => boolean = () => false): Station {
  const count = 400;
  const stream = { reynolds, critical };
  const [lin, moved] = [linear(), station()];
  let before = station();
  const theta = 0.664 * Math.sqrt(front / reynolds);
  fill(before, "laminar", front, theta, speedAt(front) * theta * 2.59, 0, speedAt(front), reynolds);
  let turbulent = false;
  for (let k = 1; k <= count; k++) {
    const place = front ** (1 - k / count);
    const speed = speedAt(place);
    let at = step(turbulent ? "turbulent" : "laminar", before.state);
    if (!turbulent && at.state > critical) {
      turbulent = true;
      fill(moved, "turbulent", place, at.theta, at.mass, 0.05, speed, reynolds);
      at = step("transition", stressAtTransition(moved.shape) * moved.equilibrium);
    }
    before = at;
    if (stop(at)) return at;

    function step(mode: Mode, state: number): Station {
      const at = station();
      const v = [before.theta, (before.mass * speed) / before.speed, state];
      for (let n = 0; n < 40; n++) {
        fill(at, kindAfter(mode), place, v[0], v[1], v[2], speed, reynolds);
        linearise(lin, before, at, mode, stream, false);
        const m = [0, 1, 2].map((e) => [4, 5, 6].map((c) => lin.slope[e * 8 + c]));
        const solved = cramer(m, [...lin.value].map((value) => -value));
        const rate = Math.min(1, 0.3 / Math.max(...solved.slice(0, mode === "laminar" ? 2 : 3).map((d, c) => Math.abs(d / v[c]))));
        solved.forEach((d, c) => (v[c] += rate * d));
      }
      fill(at, kindAfter(mode), place, v[0], v[1], v[2], speed, reynolds);
      return at;
    }
  }
  return before;
}

function cramer(m: readonly (readonly number[])[], right: readonly number[]): number[] {
  const determinant = ([a, b, c]: readonly (readonly number[])[]) =>
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  return [0, 1, 2].map((k) => determinant(m.map((row, e) => row.map((value, c) => (c === k ? right[e] : value)))) / determinant(m));
}

describe("laminar layers", () => {
  // H. Blasius: θ = 0.664 x ⁄ √Re, H = 2.591; so 1.328 ⁄ √Re for a side. Closures are fitted to 1 %.
  it.each([1e5, 2e5, 5e5])("a plate at %d", (reynolds) => {
    const { theta, shape } = plate(() => 1, reynolds, 1e6);
    expectNear(2 * theta, 1.328 / Math.sqrt(reynolds), 0.01);
    expectNear(shape, 2.591, 0.01);
  });

  // K. Hiemenz: θ = 0.292 √(ν ⁄ a), H = 2.216.
  it("a stagnation point", () => {
    expectNear(Math.sqrt(stagnationThickness), 0.292, 0.01);
    expectNear(stagnationShape, 2.216, 0.01);
  });

  // L. Howarth's retarded flow u = 1 − x: separation at x = 0.120 (H. Schlichting, Boundary-Layer Theory; from memory, high).
  it("a stream that slows down evenly", () => {
    const end = plate((x) => 1 - 0.14 * x, 1e5, 1e6, ({ shape }) => laminarFriction(shape) < 0.03);
    // Friction is nearly nothing there: a layer whose speeds are given can't go on to nothing. Two-equation methods come near.
    expectNear(0.14 * end.place, 0.12, 0.05);
  });

  // B. Thwaites' own examples: a plate 0.671 instead of 0.664; Hiemenz' flow √0.075 = 0.274 instead of 0.292.
  it("Thwaites' method", () => {
    expectNear(thwaitesTheta(thwaitesIntegral(1, 1, 1), 1, 1e5), 0.6708 / Math.sqrt(1e5), 1e-3);
    expectNear(thwaitesTheta(thwaitesIntegral(0, 2, 2), 2, 1e5), Math.sqrt(0.075 / 1e5), 1e-3);
    expectNear(thwaitesShape(0), 2.61, 1e-9);
    expect(thwaitesShape(-0.09)).toBeGreaterThan(3.4);
  });
});

describe("turbulent layers", () => {
  // c_f = 0.024 Re_θ^−¼, to which direct simulations of plates keep from 670 to 4000 (P. Schlatter and R. Örlü, Journal of Fluid
  // Mechanics 659, 2010), with their shape parameters.
  it.each([[670, 1.49], [1410, 1.433], [2540, 1.4], [4060, 1.386]])("friction at a Reynolds number on θ of %d", (reynolds, shape) => {
    expectNear(2 * turbulentFriction(shape, reynolds), 0.024 * reynolds ** -0.25, 0.03);
  });

  // L. Prandtl and H. Schlichting: 0.455 ⁄ (log Re)^2.58 for a side, turbulent from the front.
  // At 1 million, where a fifteenth is laminar and stress lags behind transition, it is 7 % low.
  it("a plate at 10 million", () => {
    const { theta, shape } = plate(() => 1, 1e7, 0.01);
    // Laminar at its front, and formulas of the time differ by 3 %.
    expectNear(2 * theta, 0.455 / Math.log10(1e7) ** 2.58, 0.06);
    expect(shape).toBeGreaterThan(1.25);
    expect(shape).toBeLessThan(1.5);
  });
});

describe("waves", () => {
  // H. B. Schubauer and P. S. Klebanoff: transition of a quiet plate at about 2.8 million; e⁹ at about 3 million. Here with Blasius'
  // own shape parameter: that of the closures is 1 % lower, and as waves are so sensitive to it, theirs is 4 million.
  it("transition of a plate", () => {
    const step = 1e3;
    let [place, amplitude] = [step, 0];
    for (; amplitude < 9; place += step) {
      const onTheta = 0.664 * Math.sqrt(place);
      amplitude += (amplification(2.591, onTheta) / onTheta) * step;
    }
    expect(place).toBeGreaterThan(2.5e6);
    expect(place).toBeLessThan(3.5e6);
  });

  // Critical Reynolds numbers on θ of the Falkner–Skan profiles, from stability theory: Blasius 200, separation about 25.
  it("are damped below the critical Reynolds number", () => {
    expect(amplification(2.591, 150)).toBe(0);
    expect(amplification(2.591, 600)).toBeGreaterThan(0);
    expect(amplification(4, 60)).toBeGreaterThan(0);
    expect(amplification(2.3, 1000)).toBe(0);
  });
});
