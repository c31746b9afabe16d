import { describe, expect, it } from "vitest";
import type { AirBasis, AirMode } from "../../server/compute/aircraft/air-basis";
import { stateOf } from "../../server/compute/aircraft/air-state";
import { trimAt } from "../../server/compute/aircraft/trim";
import { control } from "../server/compute/aircraft/planes";
import { expectNear } from "./near";

// Worked examples of J. D. Anderson, Introduction to Flight, ch. 7 (inputs as printed; results from its formulas). The basis is
// written by hand: lift of wing and body alone, the tail by its moment, as the book has it. Slopes per degree, angles absolute.
const degree = Math.PI / 180;
const area = 0.1;
const chord = 0.1;

interface Plane {
  /** Lift slope per degree, and moment coefficients about the aerodynamic centre of wing and body: at no lift and per degree. */
  readonly slope: number;
  readonly zero: number;
  readonly perDegree?: number;
  /** Moment coefficient per degree of elevator down. */
  readonly elevator?: number;
}

const none = new Float64Array(0);
const zeros = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0]);

/** x in chords: moments about the aerodynamic centre at 0. */
function plane({ slope, zero, perDegree = 0, elevator = 0 }: Plane): AirBasis {
  const mode = (lift: number, moment: number): AirMode => ({ circulation: none, lift: lift * area, moment: moment * area * chord });
  const whole = control("elevator", { allMoving: true });
  return {
    strips: [], plates: [], lookups: [], about: 0, reference: { area, meanChord: chord, meanChordX: -chord / 4 },
    modes: [mode(0, zero), mode(slope / degree, perDegree / degree), mode(0, -10 * elevator), mode(0, 10 * elevator), mode(0, 0)],
    products: { drag: zeros, dragHeight: zeros, flows: [], liftHeight: [0, 0, 0, 0, 0] },
    controls: [{ path: "elevator", surface: "tail", control: whole, noseUp: -10 * degree, noseDown: 10 * degree, assumed: false }],
  };
}

const moment = (basis: AirBasis, angle: number, x: number) => stateOf(basis, { angle: angle * degree }).moment(x * chord) / (area * chord);

describe("moment of wing and body about the balance point", () => {
  it("example 7.2: −0.016 + 0.45 × 0.05 = 0.0065", () => {
    expectNear(moment(plane({ slope: 0.09, zero: -0.016 }), 5, 0.05), 0.0065, 1e-3); // a closed formula
  });
  it("example 7.3: −0.01 at 1° and 0.05 at 7.88°, measured from −1.5°", () => {
    const body = plane({ slope: 0.08, zero: -0.0318 });
    // Centre 0.109 chords ahead, −0.0318: four printed digits, 1 % of each.
    expect(Math.abs(moment(body, 2.5, 0.109) + 0.01)).toBeLessThan(5e-4);
    expect(Math.abs(moment(body, 9.38, 0.109) - 0.05)).toBeLessThan(5e-4);
  });
});

describe("with a tail of volume 0.34, slope 0.1 per degree, set −2.7°, downwash slope 0.35", () => {
  const elevator = -0.34 * 0.04;
  const whole = plane({ slope: 0.08, zero: -0.032 + 0.34 * 0.1 * 2.7, perDegree: -0.34 * 0.1 * (1 - 0.35), elevator });
  const balance = 0.11;

  it("example 7.4: −0.0650 at 9.38°", () => expectNear(moment(whole, 9.38, balance), -0.065, 0.01));

  it("example 7.5: −0.0133 per degree, 0.0598 at no lift, trimmed at 4.50°", () => {
    expectNear(moment(whole, 1, balance) - moment(whole, 0, balance), -0.0133, 0.01);
    expectNear(moment(whole, 0, balance), 0.0598, 1e-3);
    const held = trimAt(whole, { liftCoefficient: 0.08 * 4.5, cgX: balance * chord })!;
    expect(Math.abs(held.deflections[0].angle / degree)).toBeLessThan(0.02); // three printed digits of 4.50
  });

  it("examples 7.6 and 7.7: neutral point at 0.51625, centre of wing and body at 0.24", () => {
    const there = 0.51625 - 0.24;
    expect(moment(whole, 5, there) - moment(whole, 0, there)).toBeCloseTo(0, 12);
  });

  it("example 7.8: 22,700 N on 19 m² at 61 m/s take 6.55° and 2.00° of elevator up", () => {
    const liftCoefficient = 22700 / (0.5 * 1.225 * 61 ** 2 * 19);
    expectNear(liftCoefficient, 0.5242, 1e-3);
    const held = trimAt(whole, { liftCoefficient, cgX: balance * chord })!;
    expectNear(held.angle / degree, 6.553, 1e-3);
    // The book rounds the slope to −0.0133 and the constant to 0.06; 0.05° is what it allows.
    expect(Math.abs(held.deflections[0].angle / degree + 2)).toBeLessThan(0.05);
    expectNear(held.pitch, 0.2, 0.025);
    expectNear(held.throwLeft.noseUp, 0.8, 0.01);
  });
});
