import { describe, expect, it } from "vitest";
import { effective } from "../../server/compute/aircraft/pitch-controls";
import { steeringAxis } from "../../server/compute/aircraft/steering";
import { deflectedSlope } from "../../server/compute/aircraft/deflection";
import { lateralFlowSteps } from "../../server/compute/lattice/lateral-flow";
import { inducedDrag } from "../../server/compute/lattice/induced-drag";
import { solveLattice } from "../../server/compute/lattice/solve-lattice";
import { flapTheory } from "../../server/compute/section-air/flapped";
import type { Surface } from "../../server/model/design/geometry";
import { mirrored, single } from "../server/compute/airframes";
import { control, degree, withControls } from "../server/compute/aircraft/planes";
import { finished } from "../server/compute/finished";
import { liftingLine } from "./lifting-line";
import { expectNear } from "./near";

const flowOf = (surfaces: readonly Surface[], whole = false) => finished(lateralFlowSteps(surfaces, { whole }))!;
const at = { x: 0.25, z: 0 };

const wingOf = (aspectRatio: number, taper: number) => {
  const root = 2 / (1 + taper);
  return mirrored([[0, 0, 0, root], [(root * (1 - taper)) / 4, aspectRatio / 2, 0, root * taper]]);
};

describe("ailerons over the outer half (lifting line: method of H. A. Pearson, R. T. Jones, NACA Report 635, 1938)", () => {
  const chord = 0.25;
  const aileron = control("aileron", { along: [0.5, 1], chord: [chord, chord], throws: { up: 20 * degree, down: 10 * degree } });
  // Rolls to the left where it is positive; per radian of effective angle of the section.
  const roll = (aspectRatio: number, taper: number) => {
    const surfaces = [withControls(wingOf(aspectRatio, taper), aileron)];
    const flow = flowOf(surfaces);
    return -flow.bend(steeringAxis(flow, surfaces, "roll")!.slopes).loads(0, at).roll / aspectRatio ** 2 / flapTheory(chord).effect;
  };
  const outer = (share: number) => (Math.abs(share) > 0.5 ? Math.sign(share) : 0);
  const line = (aspectRatio: number, taper: number) => liftingLine(aspectRatio, taper, outer, 240).roll;

  it.each([1, 0.5])("taper %d: the lattice comes to the lifting line as the wing grows longer", (taper) => {
    // A lifting line knows no chord, and overrates a wing as chord over span: 7.5 % at aspect ratio 6, so 1 % at 80 needs no other reason.
    expectNear(roll(80, taper), line(80, taper), 0.01);
  });
  // NACA Report 635's method at aspect ratio 6, and the lattice under it by what lifting surfaces differ: 5 to 10 %.
  it.each([[1, 0.5861], [0.5, 0.5382]])("taper %d, aspect ratio 6: under %d by the wing's chord", (taper, printed) => {
    const short = 1 - roll(6, taper) / printed;
    expect(short).toBeGreaterThan(0.05);
    expect(short).toBeLessThan(0.1);
  });
  it("go as far as the mean of both sides, less what plain flaps lack", () => {
    const surfaces = [withControls(wingOf(8, 1), aileron)];
    const axis = steeringAxis(flowOf(surfaces), surfaces, "roll")!;
    expect(axis.throw.positive).toBeCloseTo((effective(aileron, 20 * degree) + effective(aileron, 10 * degree)) / 2, 12);
    expect(axis.throw.negative).toBeCloseTo(axis.throw.positive, 12);
    expect(axis.angle(axis.throw.positive)).toBeCloseTo(15 * degree, 9);
    expect(axis.angle(-axis.throw.negative)).toBeCloseTo(-15 * degree, 9);
  });
  it("in lift, the side that goes down drags: the nose swings out of the roll", () => {
    const surfaces = [withControls(wingOf(8, 1), aileron)];
    const flow = flowOf(surfaces);
    const { loads } = flow.bend(steeringAxis(flow, surfaces, "roll")!.slopes);
    const [none, lifting] = [loads(0, at), loads(0.5 * 8, at)];
    expect(lifting.roll).toBeLessThan(0); // right wing up, rolls left
    expect(none.yaw).toBeCloseTo(0, 9);
    expect(lifting.yaw).toBeGreaterThan(0); // nose right
  });
});

describe("rudders", () => {
  const rudder = control("rudder", { along: [0, 1], chord: [0.4, 0.4], throws: { left: 25 * degree, right: 20 * degree } });
  const wing = mirrored([[0, 0, 0, 0.25], [0, 1, 0, 0.25]]);
  const loadsOf = (surfaces: readonly Surface[], whole = false) => {
    const flow = flowOf(surfaces, whole);
    return flow.bend(steeringAxis(flow, surfaces, "yaw")!.slopes).loads(0, at);
  };
  const upright = (y: number) => withControls(single([[1, y, 0, 0.2], [1.05, y, 0.3, 0.15]], { kind: "fin", path: `fin${y}` }), rudder);

  it("trailing edge left turns the nose left and pushes the tail right, in the plane of symmetry or beside it", () => {
    for (const surfaces of [[wing, upright(0)], [wing, upright(0.3), upright(-0.3)]]) {
      const { side, yaw, roll } = loadsOf(surfaces);
      expect(side).toBeGreaterThan(0);
      expect(yaw).toBeLessThan(0);
      expect(roll).toBeGreaterThan(0); // above the balance point: right wing down
      // On the fin's own arm: between the quarter chord and, for a flap, half the chord of the mean.
      expect(-yaw / side).toBeGreaterThan(0.8);
      expect(-yaw / side).toBeLessThan(0.9);
    }
  });
  it("a very tall fin has the lift of its section's flap", () => {
    const length = 200;
    const tall = withControls(single([[1, 0, -length / 2, 1], [1, 0, length / 2, 1]], { kind: "fin", path: "fin" }), control("rudder", { chord: [0.3, 0.3] }));
    // 2π τ per radian (H. Glauert, ARC R&M 1095) times AR/(AR + 2), 0.99; the level wing far ahead takes no part: 1 %.
    expectNear(loadsOf([mirrored([[-500, 0, 0, 0.25], [-500, 1, 0, 0.25]]), tall]).side, 2 * Math.PI * flapTheory(0.3).effect * length * (length / (length + 2)), 0.01);
  });
  it("half a design with opposite images answers as the whole does", () => {
    // Strips are laid by other rules once both sides are cut: as for sideslip, 3 %.
    for (const surfaces of [[wing, upright(0)], [wing, upright(0.3), upright(-0.3)]]) {
      const [half, both] = [loadsOf(surfaces), loadsOf(surfaces, true)];
      expect(both.yaw).not.toBe(half.yaw);
      expectNear(half.yaw, both.yaw, 0.03);
      expectNear(half.side, both.side, 0.03);
    }
  });
  it("throws differ each way", () => {
    const surfaces = [wing, upright(0)];
    const axis = steeringAxis(flowOf(surfaces), surfaces, "yaw")!;
    expect(axis.angle(axis.throw.positive)).toBeCloseTo(25 * degree, 9);
    expect(axis.angle(-axis.throw.negative)).toBeCloseTo(-20 * degree, 9);
  });
  it("ruddervators push the tail as their slope lets them", () => {
    const tail = (slope: number) => withControls(mirrored([[1, 0, 0, 0.2], [1, 0.3 * Math.cos(slope), 0.3 * Math.sin(slope), 0.2]], { kind: "tailplane", path: "vee" }),
      control("ruddervator", { chord: [0.35, 0.35] }));
    const [steep, flat] = [40 * degree, 10 * degree].map((slope) => loadsOf([wing, tail(slope)]));
    expect(steep.yaw).toBeLessThan(0);
    expect(steep.side).toBeGreaterThan(0);
    // Side force goes as the sine of the slope; what the halves do to each other and to the wing differs a little: 10 %.
    expectNear(steep.side / flat.side, Math.sin(40 * degree) / Math.sin(10 * degree), 0.1);
    expect(Math.sign(loadsOf([wing, tail(-35 * degree)]).side)).toBe(1);
  });
});

describe("induced drag of what differs between the sides", () => {
  it("is that of the whole lattice's wake", () => {
    const aileron = control("aileron", { along: [0.5, 1], chord: [0.25, 0.25] });
    const surfaces = [withControls(wingOf(6, 1), aileron)];
    const flow = flowOf(surfaces);
    const { circulation } = flow.bend(steeringAxis(flow, surfaces, "roll")!.slopes);
    const whole = solveLattice(surfaces, { whole: true })!;
    const answer = whole.respond(deflectedSlope(whole, [{ surface: "main", control: aileron, angle: 1, left: -1 }]));
    const strips = whole.stripCirculation(answer);
    const drag = inducedDrag(whole.strips.map((strip, i) => ({ ...strip, circulation: { slope: 0, zero: strips[i] } })), 0);
    expectNear(flow.drag(circulation, circulation), drag, 0.01); // the same but for how strips are laid
  });
});
