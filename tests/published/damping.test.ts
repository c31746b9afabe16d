import { describe, expect, it } from "vitest";
import { lateralSteps } from "../../server/compute/derivatives/lateral";
import { pitchRate } from "../../server/compute/derivatives/pitch-rate";
import { lateralFlowSteps } from "../../server/compute/lattice/lateral-flow";
import { solveLattice } from "../../server/compute/lattice/solve-lattice";
import { referenceGeometry } from "../../server/compute/planform/reference-geometry";
import type { Surface } from "../../server/model/design/geometry";
import { mirrored, single } from "../server/compute/airframes";
import { finished } from "../server/compute/finished";
import { expectNear } from "./near";

/** Quarter chord unswept, mean geometric chord 1, rising by `slope`. */
function wingOf(aspectRatio: number, taper: number, slope = 0): Surface {
  const root = 2 / (1 + taper);
  const half = aspectRatio / 2;
  return mirrored([[0, 0, 0, root], [(root * (1 - taper)) / 4, half, slope * half, root * taper]]);
}

const derivatives = (surfaces: readonly Surface[], lift: number, x = 0.25, z = 0) =>
  finished(lateralSteps(finished(lateralFlowSteps(surfaces, {}))!, referenceGeometry(surfaces, [])!))({ lift, x, z });

// Flat-plate lifting surface, converged by extrapolation of the horseshoe equations in J. J. Bertin, M. L. Smith, Aerodynamics
// for Engineers; its own error is 0.05 %, with half a last digit besides 0.15 %.
describe("roll damping of unswept wings", () => {
  it.each([[4, 1, -0.336], [6, 1, -0.4402], [6, 0.5, -0.4196], [8, 0.5, -0.4865]])("aspect ratio %d, taper %d", (aspectRatio, taper, damping) => {
    expectNear(derivatives([wingOf(aspectRatio, taper)], 0).rollRate.roll, damping, 1.5e-3);
  });
  it.each([[6, 1, -0.5233], [6, 0.5, -0.4866], [8, 0.5, -0.5438], [10, 0.5, -0.5854]])(
    "is a little less than by lifting line, which knows no chord: aspect ratio %d, taper %d (method of NACA Report 635)", (aspectRatio, taper, line) => {
      const share = derivatives([wingOf(aspectRatio, taper)], 0).rollRate.roll / line;
      // A lifting line overrates the halves of a wing that lift against each other, each of half the aspect ratio.
      expect(share).toBeLessThan(0.93);
      expect(share).toBeGreaterThan(0.83);
    });
});

describe("a fin far from all else", () => {
  // Sv, av and lv as in R. C. Nelson, ch. 2 and 3 (from memory): CYβ = −av Sv/S, Cnβ = av Sv lv/(S b), Cnr = −2 av (Sv/S)(lv/b)²,
  // with av that of the same plate lying flat, alone.
  const height = 0.3;
  const chord = 0.15;
  const arm = 30;
  const wing = mirrored([[0, 0, 0, 0.25], [0, 1, 0, 0.25]]);
  const fin = single([[arm, 0, 20, chord], [arm, 0, 20 + height, chord]], { kind: "fin" });
  const plate = solveLattice([single([[arm, 0, 20, chord], [arm, height, 20, chord]], { kind: "tailplane" })])!;
  const { area, span } = referenceGeometry([wing], [])!;
  const { sideslip, yawRate } = derivatives([wing, fin], 0, 0, 20 + height / 2);

  // 1 %: the two plates are cut into strips by different rules.
  it("side force", () => expectNear(sideslip.side, -plate.liftSlope / area, 0.01));
  it("yaw stiffness", () => expectNear(sideslip.yaw, (plate.liftSlope * plate.neutralPoint) / (area * span), 0.01));
  it("yaw damping", () => expectNear(yawRate.yaw, (-2 * plate.liftSlope * (plate.neutralPoint / span) ** 2) / area, 0.01));
  it("side force of yawing", () => expectNear(yawRate.side, (2 * plate.liftSlope * plate.neutralPoint) / (area * span), 0.01));
});

describe("pitch damping", () => {
  it("of a tail far behind: Cmq = −2 at St/S (lt/c)², Cmα̇ = Cmq dε/dα (R. C. Nelson, table 3.3; from memory)", () => {
    const arm = 30;
    const wing = mirrored([[0, 0, 0, 0.25], [0, 1, 0, 0.25]]);
    const tail = mirrored([[arm, 0, 0.3, 0.15], [arm, 0.3, 0.3, 0.15]], { kind: "tailplane" });
    const reference = referenceGeometry([wing], [])!;
    const alone = solveLattice([tail])!;
    const both = solveLattice([wing, tail])!;
    const quarter = 0.0625;
    const found = pitchRate(both, reference, quarter);
    const expected = (-2 * alone.liftSlope * ((alone.neutralPoint - quarter) / 0.25) ** 2) / reference.area;
    // 1 %: the wing's own damping and what its turning does to the tail are of the order of chord over arm. Its lift is that of half
    // a chord's turn, as the three-quarter point moves.
    expectNear(found.moment, expected, 0.01);
    expectNear(found.lagMoment, expected * both.downwashSlope!, 0.01);
    const own = solveLattice([wing])!.liftSlope / reference.area;
    expectNear(found.lift, own + (2 * alone.liftSlope * (alone.neutralPoint - quarter)) / (reference.area * 0.25), 0.01);
  });

  it("moves with the balance point as the statics of a turn say", () => {
    const surfaces = [wingOf(8, 0.5), mirrored([[3, 0, 0.2, 0.5], [3, 1, 0.2, 0.5]], { kind: "tailplane" })];
    const reference = referenceGeometry(surfaces, [])!;
    const near = pitchRate(solveLattice(surfaces, { about: 0 })!, reference, 0.6);
    const far = pitchRate(solveLattice(surfaces, { about: 5 })!, reference, 0.6);
    expect(near.moment).toBeCloseTo(far.moment, 9);
    expect(near.lift).toBeCloseTo(far.lift, 9);
    expect(near.moment).toBeLessThan(0);
  });
});

describe("yawing and rolling rectangular wing in lift", () => {
  // Strip theory with the lift spread evenly: Clr = CL/3 and Cnp = −CL/6; a load that falls off towards the tips and the induced flow
  // take part of both away.
  const of = (lift: number) => derivatives([wingOf(8, 1)], lift);
  it("rolling moment of yawing is to the slower wing, under strip theory's CL/3", () => {
    const share = of(1).yawRate.roll;
    expect(share).toBeGreaterThan(0.2);
    expect(share).toBeLessThan(1 / 3);
  });
  it("yawing moment of rolling is adverse, under strip theory's CL/6", () => {
    const share = of(1).rollRate.yaw;
    expect(share).toBeLessThan(0);
    expect(share).toBeGreaterThan(-1 / 6);
  });
  it("both grow with the lift and vanish without", () => {
    const [none, half, one] = [0, 0.5, 1].map(of);
    expect(none.yawRate.roll).toBeCloseTo(0, 9);
    expect(half.yawRate.roll).toBeCloseTo(one.yawRate.roll / 2, 9);
    expect(half.rollRate.yaw).toBeCloseTo(one.rollRate.yaw / 2, 9);
  });
});
