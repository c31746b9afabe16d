import { describe, expect, it } from "vitest";
import { deflectedSlope } from "../../server/compute/aircraft/deflection";
import { solveLattice } from "../../server/compute/lattice/solve-lattice";
import { mirrored } from "../server/compute/airframes";
import { control } from "../server/compute/aircraft/planes";
import { liftingLine } from "./lifting-line";
import { expectNear } from "./near";

const wingOf = (aspectRatio: number, taper: number) => {
  const root = 2 / (1 + taper);
  return mirrored([[0, 0, 0, root], [(root * (1 - taper)) / 4, aspectRatio / 2, 0, root * taper]]);
};

// H. Glauert, ARC R&M 1095, 1927: turn of the angle of no lift and moment about the quarter chord by a plain flap, per radian.
const table = [
  [0.1, 0.39582, -0.54], [0.15, 0.4805, -0.60702], [0.2, 0.54982, -0.64], [0.25, 0.609, -0.64952], [0.3, 0.66075, -0.64156],
  [0.35, 0.70666, -0.62006], [0.4, 0.74778, -0.58788], [0.5, 0.81831, -0.5],
] as const;

describe("a flap along a very long wing", () => {
  const aspectRatio = 200;
  const found = (density: number) => {
    const lattice = solveLattice([wingOf(aspectRatio, 1)], { about: 0.25, density })!;
    return (chord: number) => {
      const answer = lattice.respond(deflectedSlope(lattice, [{ surface: "main", control: control("flap", { chord: [chord, chord] }), angle: 1 }]));
      return {
        effect: lattice.stripCirculation(answer)[0] / lattice.strips[0].circulation.slope,
        // At no lift: what lift the flap gives is taken away by the angle.
        moment: (answer.moment - (lattice.momentSlope * answer.lift) / lattice.liftSlope) / aspectRatio,
      };
    };
  };
  const [fine, coarse] = [found(1), found(0.5)];
  it.each(table)("chord share %d: effect %d, moment %d", (chord, effect, moment) => {
    // 0.1 % and 0.2 %: in the middle the wing is plane to its chord over its span; its tips take 1/200 of a part of the moment.
    for (const of of [fine, coarse]) {
      expectNear(of(chord).effect, effect, 1e-3);
      expectNear(of(chord).moment, moment, 2e-3);
    }
  });
});

describe("ailerons over the outer half, per radian of effective angle", () => {
  const outer = (share: number) => (Math.abs(share) > 0.5 ? Math.sign(share) : 0);
  // 240 terms: with a multiple of three the step lies half way between two collocation points.
  const line = (aspectRatio: number, taper: number) => liftingLine(aspectRatio, taper, outer, 240).roll;
  const lattice = (aspectRatio: number, taper: number) => {
    const solved = solveLattice([wingOf(aspectRatio, taper)], { whole: true })!;
    const aileron = control("aileron", { along: [0.5, 1], chord: [0.25, 0.25] });
    const effective = 1 / 0.609;
    // Left wing down: right aileron down.
    const answer = solved.respond(deflectedSlope(solved, [{ surface: "main", control: aileron, angle: effective, left: -effective }]));
    expect(Math.abs(answer.lift / answer.roll)).toBeLessThan(1e-9);
    return -answer.roll / aspectRatio ** 2;
  };

  // Method of H. A. Pearson, R. T. Jones, NACA Report 635, 1938; 0.1 %: four printed digits and the step.
  it.each([[6, 1, 0.5861], [6, 0.5, 0.5382]])("lifting line, aspect ratio %d, taper %d: %d", (aspectRatio, taper, roll) => {
    expectNear(line(aspectRatio, taper), roll, 1e-3);
  });

  // A lifting line knows no chord: it overrates a wing the more the shorter it is (roll damping at aspect ratio 6 by 19 %, by converged
  // lifting surfaces). So the two must meet as the wing grows longer, the difference falling as chord over span.
  it("the lattice comes to the lifting line as the wing grows longer: 1 % at aspect ratio 80", () => {
    expectNear(lattice(80, 1), line(80, 1), 0.01);
    expectNear(lattice(80, 0.5), line(80, 0.5), 0.01);
    const short = (aspectRatio: number) => 1 - lattice(aspectRatio, 1) / line(aspectRatio, 1);
    expect(short(6)).toBeGreaterThan(0.05);
    expect(short(6)).toBeLessThan(0.1);
    expectNear(short(30) / short(60), 2, 0.1); // next order in chord over span
  });
});
