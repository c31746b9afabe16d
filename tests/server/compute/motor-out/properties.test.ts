import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { standardGravity } from "../../../../server/compute/constants";
import { lateralBalance, type LateralFrame } from "../../../../server/compute/motor-out/balance";
import { heldAt, minimumControlSpeed } from "../../../../server/compute/motor-out/minimum-control-speed";
import { criticalMotor, motorOut } from "../../../../server/compute/motor-out/motor-out";
import { together, plantLoads, type Lateral } from "../../../../server/compute/motor-out/plant";
import { parabolic } from "../../../published/parabolic";
import { degree, frame, plant, twin, twinOf } from "../../../published/twin";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const load = fc.record({ side: number(-2, 2), roll: number(-1, 1), yaw: number(-4, 4) });

const residual = (f: LateralFrame, of: Lateral, speed: number, way?: "least use" | "wings level" | "no sideslip") => {
  const held = lateralBalance(f, of, speed, way);
  if (!held) return undefined;
  const force = (f.density * speed ** 2 * f.area) / 2;
  const part = (key: keyof Lateral) =>
    force * (key === "side" ? 1 : f.span) * (f.sideslip[key] * held.sideslip + (f.aileron?.[key] ?? 0) * (held.aileron ?? 0) + (f.rudder?.[key] ?? 0) * (held.rudder ?? 0));
  return { held, side: of.side + part("side") + f.mass * standardGravity * Math.sin(held.bank), roll: of.roll + part("roll"), yaw: of.yaw + part("yaw") };
};

describe("lateral balance", () => {
  const frames: readonly LateralFrame[] = [frame, { ...frame, aileron: undefined }, { ...frame, rudder: undefined }];
  it("closes in side force, roll and yaw, with both controls or one", () => {
    fc.assert(fc.property(fc.constantFrom(...frames), load, number(6, 30), fc.constantFrom("least use" as const, "wings level" as const, "no sideslip" as const), (f, of, speed, way) => {
      const found = residual(f, of, speed, way);
      if (!found) return;
      // Three linear equations with coefficients 100 apart: a billionth of loads of a few newtons.
      for (const key of ["side", "roll", "yaw"] as const) expect(Math.abs(found[key])).toBeLessThan(1e-9 * (20 + speed ** 2));
    }));
  });
  it("no other way, and no bank within the limit, uses less of the controls", () => {
    fc.assert(fc.property(load, number(6, 30), (of, speed) => {
      const best = lateralBalance(frame, of, speed)!.use;
      for (const way of ["wings level", "no sideslip"] as const) expect(best).toBeLessThanOrEqual(lateralBalance(frame, of, speed, way)!.use + 1e-9);
    }));
  });
  it("is mirrored by mirrored loads", () => {
    fc.assert(fc.property(load, number(6, 30), (of, speed) => {
      const [a, b] = [lateralBalance(frame, of, speed)!, lateralBalance(frame, { side: -of.side, roll: -of.roll, yaw: -of.yaw }, speed)!];
      expect(b.use).toBeCloseTo(a.use, 9);
    }));
  });
  it("throws of two sizes count each way", () => {
    const lame = { ...frame, rudder: { ...frame.rudder, throw: { negative: 5 * degree, positive: 25 * degree } } };
    const at = (yaw: number) => lateralBalance(lame, { side: 0, roll: 0, yaw }, 12, "wings level")!;
    const [left, right] = [at(1), at(-1)].map(({ rudder, use, limit }) => ({ rudder: rudder!, use, limit }));
    expect(left.rudder).toBeCloseTo(-right.rudder, 12);
    expect(right.limit).toBe("rudder");
    expect(right.use / left.use).toBeGreaterThan(1);
  });
});

describe("a motor out", () => {
  it("what causes give adds up to the whole, and mirrored aircraft give mirrored loads", () => {
    fc.assert(fc.property(number(0.1, 1), number(0, 20), number(0, 1), number(-0.1, 0.1), number(-3, 3), number(5, 30), (y, thrust, torque, bladeOffset, normalForce, speed) => {
      const forces = { thrust, torque, bladeOffset, normalForce };
      const pair = [plant("right", y, true, forces, 1), plant("left", -y, false, forces, 1)];
      const [right, left] = ["right", "left"].map((dead) => together(plantLoads(pair, [dead], [0.1, 0, 0.05], speed)!));
      for (const key of ["side", "roll", "yaw"] as const) expect(left[key] + right[key]).toBeCloseTo(0, 9);
      expect(left.yaw).toBeLessThanOrEqual(-(thrust * (y - Math.abs(bladeOffset)) + y) + 1e-9); // left dead: turns left
    }));
  });
  it("at the minimum control speed something is used up; above, less; below, more", () => {
    for (const turning of ["inboard", "outboard", "clockwise"] as const) {
      const { speed, held } = minimumControlSpeed(twin(turning), ["left"], 3, 25)!;
      expect(held.use).toBeCloseTo(1, 7);
      expect(heldAt(twin(turning), ["left"], speed * 1.01)!.use).toBeLessThan(1);
      expect(heldAt(twin(turning), ["left"], speed * 0.99)!.use).toBeGreaterThan(1);
    }
  });
  it("more thrust raises the minimum control speed, more rudder lowers it", () => {
    fc.assert(fc.property(number(4, 12), number(1.05, 2), (thrust, more) => {
      const at = (t: number, f: LateralFrame = frame) =>
        minimumControlSpeed({ ...twinOf([plant("left", -0.4, true, { thrust: t }), plant("right", 0.4, true, { thrust: t })]), frame: () => f }, ["left"], 2, 60)!.speed;
      expect(at(thrust * more)).toBeGreaterThanOrEqual(at(thrust) - 1e-6);
      const bigger = { ...frame, rudder: { ...frame.rudder, throw: { negative: 25 * degree * more, positive: 25 * degree * more } } };
      expect(at(thrust, bigger)).toBeLessThanOrEqual(at(thrust) + 1e-6);
    }));
  });
  it("leaves the climb that half the thrust gives, less the dead one's drag and the trim's, no slower than it can be held", () => {
    const airframe = parabolic({ weight: 3 * standardGravity, area: 0.5, aspectRatio: 6.48, spanEfficiency: 0.8, parasite: 0.035, stallSpeed: 8 });
    const whole = { ...airframe, thrust: (speed: number) => 2 * Math.max(0, 12 - 0.4 * speed) };
    const big = { ...frame, rudder: { ...frame.rudder, side: 0.3, yaw: -0.15 } };
    const pair = (deadDrag = 0) => ({ ...twin("clockwise", { deadDrag }), frame: () => big });
    const clean = motorOut(pair(), whole, "left");
    expect(clean.climb!.speed).toBeGreaterThanOrEqual(Math.max(8, clean.control!.speed) - 1e-9);
    const half = (clean.climb!.speed * (12 - 0.4 * clean.climb!.speed - airframe.drag(clean.climb!.speed, clean.climb!.loadFactor)!)) / (3 * standardGravity);
    expect(clean.climb!.rate).toBeCloseTo(half, 6);
    expect(motorOut(pair(1), whole, "left").climb!.rate).toBeLessThan(clean.climb!.rate);
    expect(motorOut(pair(), whole, "left", () => 1).climb!.rate).toBeLessThan(clean.climb!.rate);
    // Here 5° of bank is too little to hold all of the rudder's side force: the sideslip is what is left.
    expect(clean.atLiftOff!.bank).toBeCloseTo(5 * degree, 9);
    expect(Math.abs(clean.atLiftOff!.sideslip)).toBeLessThan(Math.abs(heldAt(pair(), ["left"], clean.atLiftOff!.speed, "wings level")!.sideslip));
    expect(clean.atLiftOff!.use).toBeLessThanOrEqual(1);
  });
  it("unknown thrust, drag or derivatives leave it unknown", () => {
    const blind = { ...twin("clockwise"), frame: () => undefined };
    expect(heldAt(blind, ["left"], 10)).toBeUndefined();
    expect(criticalMotor(blind, 8)).toBeUndefined();
    const dumb = twinOf([plant("left", -0.3, true, { thrust: 5 }), { ...plant("right", 0.3, true, { thrust: 5 }), running: () => undefined }]);
    expect(minimumControlSpeed(dumb, ["left"], 3, 30)).toBeUndefined();
    expect(minimumControlSpeed(dumb, ["right"], 3, 30)).toBeDefined();
  });
});
