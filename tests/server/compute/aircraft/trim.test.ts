import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deflectionAt, effective, stickEffect, stickFor } from "../../../../server/compute/aircraft/pitch-controls";
import { heldAt, trimAt } from "../../../../server/compute/aircraft/trim";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import { mirrored, tapered } from "../airframes";
import { basisOf, control, degree, trainer, withControls } from "./planes";

const plane = trainer();
const basis = basisOf(plane.surfaces, plane.bodies);
const neutral = neutralPoint(plane)!.x;

describe("trim", () => {
  it("has the lift asked for and no moment, with thrust and heights in it", () => {
    const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(fc.property(within(-0.5, 1.5), within(0.2, 0.35), within(-0.1, 0.2), within(-0.01, 0.01), (liftCoefficient, cgX, cgZ, momentOfThrust) => {
      const held = trimAt(basis, { liftCoefficient, cgX, cgZ, momentOfThrust })!;
      expect(held.liftCoefficient).toBeCloseTo(liftCoefficient, 10);
      expect(held.moment(cgX, cgZ) + momentOfThrust).toBeCloseTo(0, 10);
      expect(held.throwLeft.noseUp + held.throwLeft.noseDown).toBeCloseTo(2, 12);
    }), { numRuns: 100 });
  });

  it("slower flight takes more stick nose up where the balance point lies ahead of the neutral point, less where behind", () => {
    const stick = (liftCoefficient: number, cgX: number) => trimAt(basis, { liftCoefficient, cgX })!.pitch;
    expect(stick(1, neutral - 0.05)).toBeGreaterThan(stick(0.4, neutral - 0.05));
    expect(stick(1, neutral + 0.05)).toBeLessThan(stick(0.4, neutral + 0.05));
    // Stick against lift stands still where the balance point is the neutral point: to the curve of effect over throw.
    expect(Math.abs(stick(1, neutral) - stick(0.4, neutral))).toBeLessThan(0.02);
  });

  it("a balance point farther ahead takes more stick nose up, and the elevator goes up by its share of the throw", () => {
    const [ahead, behind] = [0.24, 0.28].map((cgX) => trimAt(basis, { liftCoefficient: 0.8, cgX })!);
    expect(ahead.pitch).toBeGreaterThan(behind.pitch);
    expect(ahead.deflections).toEqual([{ path: "elevator", angle: -15 * degree * ahead.pitch }]);
    const dive = trimAt(basis, { liftCoefficient: 0.1, cgX: 0.29 })!;
    expect(dive.pitch).toBeLessThan(0);
    expect(dive.deflections[0].angle).toBeCloseTo(-12 * degree * dive.pitch, 12);
  });

  it("a low balance point under a lifting wing takes less nose up: the lift leans forward above it", () => {
    const at = (cgZ: number) => trimAt(basis, { liftCoefficient: 1, cgX: 0.27, cgZ })!;
    // Lift leans by 9° here: 0.1 m lower is worth what 0.015 m farther ahead is.
    expect(at(-0.1).pitch).toBeGreaterThan(at(0).pitch);
  });

  it("full stick either way need not be alike", () => {
    const uneven = basisOf(trainer({ throws: { up: 20 * degree, down: 0 } }).surfaces);
    expect(trimAt(uneven, { liftCoefficient: 1, cgX: 0.25 })!.pitch).toBeGreaterThan(0);
    expect(trimAt(uneven, { liftCoefficient: 0, cgX: 0.3 })).toBeUndefined();
  });

  it("there is none without a control that pitches; the stick can still be held", () => {
    const none = basisOf([tapered(1.5, 0.2, 0.2, 0)]);
    expect(trimAt(none, { liftCoefficient: 0.5, cgX: 0.05 })).toBeUndefined();
    expect(heldAt(none, 0.5)!.liftCoefficient).toBeCloseTo(0.5, 12);
    expect(heldAt(basis, 0.5, 0.3)!.liftCoefficient).toBeCloseTo(0.5, 12);
  });

  it("a canard trims nose up by going down", () => {
    const canard = withControls(mirrored([[-0.5, 0, 0.05, 0.12], [-0.5, 0.25, 0.05, 0.1]], { kind: "canard", shape: { type: "naca", digits: "2412" } }),
      control("elevator", { throws: { up: 20 * degree, down: 20 * degree } }));
    const duck = basisOf([tapered(1.6, 0.22, 0.18, 0.05), canard]);
    const [fast, slow] = [0.3, 0.8].map((liftCoefficient) => trimAt(duck, { liftCoefficient, cgX: -0.03 })!);
    expect(slow.deflections[0].angle).toBeGreaterThan(fast.deflections[0].angle);
  });
});

describe("the stick", () => {
  const elevator = basis.controls;
  it("loses effect as it goes out; the whole way is all of it, either way", () => {
    expect([stickEffect(elevator, 0), stickEffect(elevator, 1), stickEffect(elevator, -1)]).toEqual([0, 1, -1]);
    expect(stickEffect(elevator, 0.5)).toBeGreaterThan(0.5);
    expect(stickEffect([{ ...elevator[0], control: control("elevator", { allMoving: true }) }], 0.5)).toBe(0.5);
  });
  it("is found from its effect", () => {
    fc.assert(fc.property(fc.double({ min: -3.5, max: 3.5, noNaN: true }), (stick) => {
      expect(stickFor(elevator, stickEffect(elevator, stick))).toBeCloseTo(stick, 9);
    }));
    expect(stickFor(elevator, 100)).toBeGreaterThan(4);
  });
  it("more effect always takes more deflection", () => {
    for (let angle = 0.01; angle < Math.PI / 3; angle += 0.01) expect(effective(elevator[0].control, angle)).toBeGreaterThan(effective(elevator[0].control, angle - 0.01));
    expect(effective(elevator[0].control, 1.5)).toBe(effective(elevator[0].control, 1.2));
    expect(deflectionAt(elevator[0], 0)).toBeCloseTo(0, 12);
  });
});
