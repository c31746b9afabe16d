import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airBasis, otherFlapsSteps } from "../../../../server/compute/aircraft/air-basis";
import { stateOf } from "../../../../server/compute/aircraft/air-state";
import { coverage } from "../../../../server/compute/aircraft/deflection";
import { restAngle } from "../../../../server/compute/aircraft/rest";
import { inducedDrag } from "../../../../server/compute/lattice/induced-drag";
import { solveLattice } from "../../../../server/compute/lattice/solve-lattice";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import { expectNear } from "../../../published/near";
import { finished } from "../finished";
import { mirrored, moved, single, tapered } from "../airframes";
import { basisOf, control, degree, trainer, withControls } from "./planes";

/** Rounding of sums over some hundred strips. */
const rounding = 1e-9;

const plane = trainer();
const basis = basisOf(plane.surfaces, plane.bodies);

describe("flows superpose", () => {
  it("at the angle alone lift, moment and drag are those of the lattice and the neutral point", () => {
    const pitch = neutralPoint(plane)!;
    const { area, meanChord } = pitch.reference;
    const [flat, turned] = [0, 0.1].map((angle) => stateOf(basis, { angle }));
    expectNear(flat.liftCoefficient, pitch.zeroLift, rounding);
    expectNear((turned.lift - flat.lift) / 0.1 / area, pitch.liftSlope, rounding);
    expectNear((turned.moment(basis.about) - flat.moment(basis.about)) / 0.1 / (area * meanChord), pitch.momentSlope, rounding);
    expect(turned.moment(pitch.x) - flat.moment(pitch.x)).toBeCloseTo(0, 12);
    expectNear(turned.inducedDrag, inducedDrag(pitch.lattice.strips, 0.1), rounding);
  });

  it("any state is the sum of its parts, strip by strip", () => {
    const all = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    fc.assert(fc.property(all, all, fc.double({ min: 0, max: 1, noNaN: true }), (angle, pitchRate, pitch) => {
      const none = stateOf(basis, { angle: 0 });
      const sum = [{ angle }, { angle: 0, pitch }, { angle: 0, pitchRate }].map((attitude) => stateOf(basis, attitude));
      const whole = stateOf(basis, { angle, pitch, pitchRate });
      expect(whole.lift).toBeCloseTo(sum.reduce((total, { lift }) => total + lift - none.lift, none.lift), 10);
      whole.liftCoefficients.forEach((value, i) =>
        expect(value).toBeCloseTo(sum.reduce((total, { liftCoefficients: of }) => total + of[i] - none.liftCoefficients[i], none.liftCoefficients[i]), 10));
      expect(whole.inducedDrag).toBeGreaterThan(0);
    }), { numRuns: 30 });
  });

  it("lift is the sum over the strips", () => {
    const { lift, liftCoefficients } = stateOf(basis, { angle: 0.1, pitch: 0.4 });
    const sum = basis.strips.reduce((total, { chord, ends: [a, b] }, i) => total + liftCoefficients[i] * chord * (b[0] - a[0]), 0);
    expectNear(sum, lift, rounding);
  });

  it("induced drag of a flat wing is never under that of the ellipse, whatever stands out", () => {
    const wing = withControls(tapered(1.6, 0.25, 0.15, 0.05), control("flap", { along: [0.1, 0.5] }), control("elevon", { along: [0.5, 1] }));
    const flat = basisOf([wing], [], 0.3);
    fc.assert(fc.property(fc.double({ min: -0.2, max: 0.3, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (angle, pitch) => {
      const { lift, inducedDrag: drag } = stateOf(flat, { angle, pitch });
      // 1e-3: strips in place of a smooth load; the ellipse itself comes out 0.05 % low.
      expect(drag).toBeGreaterThanOrEqual((lift ** 2 / (Math.PI * 1.6 ** 2)) * (1 - 1e-3));
    }), { numRuns: 60 });
  });

  it("a turn about another line is a turn about the basis' own and an angle", () => {
    const { lattice } = neutralPoint(plane)!;
    const about = basis.about + 0.3;
    const direct = lattice.respond(({ point: [x], normal: [, nz] }) => -nz * (x - about));
    const none = stateOf(basis, { angle: 0 });
    expectNear(stateOf(basis, { angle: basis.about - about, pitchRate: 1 }).lift - none.lift, direct.lift, 1e-6);
  });
});

it("with its flaps at another angle is the basis of that angle", () => {
  const wing = withControls(tapered(1.6, 0.25, 0.15, 0.05), control("flap", { along: [0.1, 0.5] }), control("elevon", { along: [0.5, 1] }));
  const [up, down] = [basisOf([wing], [], 0), basisOf([wing], [], 0.5)];
  const turned = finished(otherFlapsSteps(up, neutralPoint({ surfaces: [wing], bodies: [] })!, { surfaces: [wing], bodies: [], flaps: 0.5 }));
  expect(turned).toEqual(down);
});

describe("controls", () => {
  const tail = (form: Parameters<typeof control>[1] = {}) => withControls(
    mirrored([[0.9, 0, 0, 0.15], [0.9, 0.3, 0, 0.15]], { kind: "tailplane" }), control("elevator", { throws: { up: 0.3, down: 0.2 }, ...form }));
  const wing = tapered(1.6, 0.2, 0.2, 0);

  it("a tail that turns whole by an angle does what a tail built at that angle does", () => {
    const turning = basisOf([wing, tail({ allMoving: true })]);
    const built = mirrored([[0.9, 0, 0, 0.15, -0.3], [0.9, 0.3, 0, 0.15, -0.3]], { kind: "tailplane" });
    const set = solveLattice([wing, built], { about: turning.about })!;
    const up = stateOf(turning, { angle: 0, pitch: 1 });
    expectNear(up.lift, set.zeroLift, 1e-6);
    expectNear(up.moment(turning.about), set.zeroMoment, 1e-6);
    expect(up.moment(0.25)).toBeGreaterThan(0);
  });

  it("a tail with an elevator lifts less than one that turns whole, by the effect of its hinge", () => {
    const whole = stateOf(basisOf([wing, tail({ allMoving: true })]), { angle: 0, pitch: 1 });
    const hinged = stateOf(basisOf([wing, tail({ chord: [0.3, 0.3] })]), { angle: 0, pitch: 1 });
    expect(hinged.lift / whole.lift).toBeGreaterThan(0.5);
    // Glauert's 0.66 of a plain flap of 30 %, and handbooks' 0.7 to 0.9 of that.
    expect(hinged.lift / whole.lift).toBeLessThan(0.66);
  });

  it.each([
    ["an elevator behind goes up", "tailplane", "elevator", 0.9, { up: 0.3, down: 0.2 }, [-0.3, 0.2]],
    ["one on a canard goes down", "canard", "elevator", -0.6, { up: 0.3, down: 0.2 }, [0.2, -0.3]],
    ["an elevon behind goes up by its pitch_up", "tailplane", "elevon", 0.9, { pitch_up: 0.3, pitch_down: 0.2 }, [-0.3, 0.2]],
    ["one ahead goes down by its pitch_up", "canard", "elevon", -0.6, { pitch_up: 0.3, pitch_down: 0.2 }, [0.3, -0.2]],
    ["a throw not written is as the other", "tailplane", "elevator", 0.9, { up: 0.3 }, [-0.3, 0.3]],
    ["on the front wing of two it goes down", "wing", "elevator", -0.6, { up: 0.3, down: 0.2 }, [0.2, -0.3]],
  ] as const)("%s for nose up", (_, kind, word, x, throws, angles) => {
    const surface = withControls(mirrored([[x, 0, 0.02, 0.15], [x, 0.3, 0.02, 0.15]], { kind, path: "p", reference: false }), control(word, { throws: { ...throws } }));
    const of = basisOf([wing, surface]);
    expect([of.controls[0].noseUp, of.controls[0].noseDown]).toEqual(angles);
    expect(of.modes[2].moment).toBeGreaterThan(0);
    expect(of.modes[3].moment).toBeLessThan(0);
    expect(of.controls[0].assumed).toBe(false);
  });

  it("elevons pitch a swept wing; ailerons, rudders and flaps are no pitch controls; without a throw the usual one is assumed", () => {
    const swept = withControls(tapered(1.6, 0.25, 0.15, 0.3), control("elevon", { along: [0.4, 1] }), control("aileron"), control("flap"));
    const of = basisOf([swept]);
    expect(of.controls.map(({ path, assumed }) => [path, assumed])).toEqual([["elevon", true]]);
    expect(of.modes[2].moment).toBeGreaterThan(0);
    expect(basisOf([wing]).controls).toEqual([]);
  });

  it("ruddervators of a V-tail pitch it", () => {
    const vee = withControls(mirrored([[0.9, 0, 0, 0.15], [0.9, 0.25, 0.18, 0.12]], { kind: "tailplane" }),
      control("ruddervator", { throws: { pitch_up: 0.2, pitch_down: 0.2 } }));
    const of = basisOf([wing, vee]);
    expect(of.modes[2].moment).toBeGreaterThan(0);
    expect(of.modes[2].lift).toBeLessThan(0);
  });

  it("reflex stands up in neutral: less lift, nose up", () => {
    const shape = (reflex?: number) => [withControls(tapered(1.6, 0.25, 0.15, 0.3), control("elevon", { along: [0.4, 1], ...(reflex ? { reflex } : {}) }))];
    const [none, stands] = [basisOf(shape()), basisOf(shape(0.05))];
    expect(stands.modes[0].lift).toBeLessThan(none.modes[0].lift);
    const pitch = (of: typeof none) => of.modes[0].moment - (of.modes[1].moment / of.modes[1].lift) * of.modes[0].lift;
    expect(pitch(stands)).toBeGreaterThan(pitch(none));
    expect(stands.strips.find(({ flap }) => flap)!.flap!.rest).toBe(-0.05);
  });

  it("flaps go as the loading has them, each as far as its throw; flaperons as far as their droop", () => {
    expect(restAngle(control("flap"), 0.5)).toBe(0.5);
    expect(restAngle(control("flap", { throws: { down: 0.4 } }), 0.5)).toBe(0.4);
    expect(restAngle(control("flap", { throws: { up: 0.1 } }), -0.2)).toBe(-0.1);
    expect(restAngle(control("flaperon", { throws: { droop: 0.2 } }), 0.5)).toBe(0.2);
    expect(restAngle(control("flaperon"), 0.5)).toBe(0);
    expect(restAngle(control("aileron", { reflex: 0.1 }), 0.5)).toBe(-0.1);
    const flapped = [withControls(wing, control("flap", { along: [0.1, 0.6] }))];
    const share = basisOf(flapped, [], 20 * degree).modes[0].lift / (basisOf(flapped).modes[1].lift * 20 * degree);
    // Half the span × Glauert's 0.661 of 30 % chord × 0.7 of that at 20°; inboard strips count for more than the mean, by up to a fifth.
    expect(share).toBeGreaterThan(0.5 * 0.661 * 0.7);
    expect(share).toBeLessThan(0.6 * 0.661 * 0.7);
  });
});

describe("what a control covers of a strip", () => {
  it.each([
    [[0.1, 0.5], [0.2, 0.4], {}, 1], [[0.1, 0.5], [0.4, 0.6], {}, 0.5], [[0.1, 0.5], [0.6, 0.4], {}, 0.5], [[0.1, 0.5], [0.5, 0.7], {}, 0],
    [[0, 1], [-0.2, 0], {}, 0], [[0, 1], [-0.2, 0], { joined: true }, 1], [[0.1, 1], [-0.2, 0], { joined: true }, 0], [[0, 1], [-0.2, 0], { allMoving: true }, 1],
  ] as const)("along %j of a strip at %j, %j: %d", (along, strip, form, share) => {
    expect(coverage(control("flap", { along, ...form }), strip).share).toBeCloseTo(share, 12);
  });
  it("its chord share goes from one end to the other", () => {
    expect(coverage(control("flap", { along: [0.2, 0.6], chord: [0.2, 0.4] }), [0.35, 0.45]).chord).toBeCloseTo(0.3, 12);
    expect(coverage(control("flap", { along: [0.6, 0.2], chord: [0.4, 0.2] }), [0.25, 0.35]).chord).toBeCloseTo(0.25, 12);
    expect(coverage(control("flap", { chord: [0.2, 0.4], allMoving: true }), [0.35, 0.45]).chord).toBe(1);
  });
});

describe("the same aircraft", () => {
  it("solved by one side or whole comes to the same", () => {
    const skew = single([[0.9, 0.001, 0.4, 0.001], [0.9, 0.002, 0.4, 0.001]], { kind: "canard", path: "speck" });
    const whole = basisOf([...plane.surfaces, skew], plane.bodies);
    expect([basis.strips.some(({ weight }) => weight === 2), whole.strips.some(({ weight }) => weight !== 1)]).toEqual([true, false]);
    // 0.5 %: the fin takes part, columns lie elsewhere, and the speck is there.
    for (const attitude of [{ angle: 0.1 }, { angle: 0.05, pitch: 0.5 }, { angle: 0, pitch: -1 }]) {
      expectNear(stateOf(whole, attitude).lift, stateOf(basis, attitude).lift, 5e-3);
    }
  });

  it("moved and grown scales by length and area", () => {
    const grown = airBasis(neutralPoint({ surfaces: moved(plane.surfaces, [1, 0, 2], 3), bodies: [] })!, { surfaces: moved(plane.surfaces, [1, 0, 2], 3), bodies: [] });
    const bare = basisOf(plane.surfaces);
    grown.modes.forEach(({ lift, moment }, m) => {
      const size = m === 4 ? 3 : 1;
      expectNear(lift, 9 * size * bare.modes[m].lift, 1e-6);
      expectNear(moment, 27 * size * bare.modes[m].moment, 1e-6);
    });
  });

  it("a control changes nothing of the lattice: the angle's flow is the very same", () => {
    const pitch = neutralPoint(plane)!;
    const [one, other] = [airBasis(pitch, plane), airBasis(pitch, trainer({ chord: [0.5, 0.5] }))];
    expect(other.modes[1]).toEqual(one.modes[1]);
    expect(other.modes[2].lift).not.toBe(one.modes[2].lift);
  });
});
