import { describe, expect, it } from "vitest";
import { airAt } from "../../../../server/compute/aircraft/air-at";
import { stateOf } from "../../../../server/compute/aircraft/air-state";
import { elevatorPower, forwardLimit } from "../../../../server/compute/aircraft/forward-limit";
import { groundStance } from "../../../../server/compute/aircraft/ground-stance";
import { levelState } from "../../../../server/compute/aircraft/level-state";
import { liftLimits } from "../../../../server/compute/aircraft/lift-limits";
import { stallSpeed } from "../../../../server/compute/aircraft/stall-speed";
import { trimAt } from "../../../../server/compute/aircraft/trim";
import { reynoldsOf } from "../../../../server/compute/drag/flow";
import { flapped } from "../../../../server/compute/section-air/flapped";
import type { SectionsAir } from "../../../../server/compute/section-air/section-air";
import type { Vec3 } from "../../../../server/model/design/geometry";
import { expectNear } from "../../../published/near";
import { mirrored, single, tapered } from "../airframes";
import { air, basisOf, control, degree, sectionsLike, trainer, withControls } from "./planes";

const plane = trainer();
const basis = basisOf(plane.surfaces, plane.bodies);
const query = { mass: 1.8, air, cgX: 0.27, cgZ: 0.02 };
const sections = sectionsLike();
const gravity = 9.80665;

/** Lift limits that grow with the Reynolds number, as they do. */
const growing: SectionsAir = (section, reynolds) => {
  const one = sections(section, reynolds)!;
  return { ...one, liftMax: 1 + 0.2 * Math.log10(reynolds / 1e5) };
};

describe("stall", () => {
  it("is level flight at the lift coefficient at which the first strip is at its limit", () => {
    const { speed, limit } = stallSpeed(basis, sections, query)!;
    expectNear(0.5 * air.density * speed ** 2 * limit.liftCoefficient * basis.reference.area, 1.8 * gravity, 1e-6);
    const held = trimAt(basis, { ...query, liftCoefficient: limit.liftCoefficient })!;
    expect(limit).toMatchObject({ path: "main", kind: "wing", sense: "up" });
    expect([limit.angle - held.angle, limit.pitch - held.pitch].map(Math.abs).every((difference) => difference < 1e-9)).toBe(true);
    const counted = basis.strips.flatMap((strip, i) => (strip.kind === "wing" && !strip.inside && !strip.outermost ? [held.liftCoefficients[i]] : []));
    expect(Math.max(...counted)).toBeCloseTo(1.3, 5);
    // The wing sticks in the fuselage: its first strip beside it.
    expect(limit.station).toBeGreaterThan(0.05);
    expect(limit.station).toBeLessThan(0.2);
  });

  it("meets the Reynolds numbers of its own speed", () => {
    const { speed, limit } = stallSpeed(basis, growing, query)!;
    const [again] = liftLimits(basis, airAt(basis, growing, { speed, air })!, query);
    expectNear(again.liftCoefficient, limit.liftCoefficient, 1e-5);
    expectNear(0.5 * air.density * speed ** 2 * limit.liftCoefficient * basis.reference.area, 1.8 * gravity, 1e-5);
  });

  it("grows with the root of the load; flaps lower it", () => {
    const one = stallSpeed(basis, sections, query)!.speed;
    expectNear(stallSpeed(basis, sections, { ...query, loadFactor: 4 })!.speed, 2 * one, 1e-6);
    expectNear(stallSpeed(basis, sections, { ...query, mass: 7.2 })!.speed, 2 * one, 1e-6);
    const withFlaps = trainer({}, [control("flap", { along: [0.1, 0.6], chord: [0.25, 0.25] })]);
    const [up, down] = [0, 30 * degree].map((flaps) => stallSpeed(basisOf(withFlaps.surfaces, withFlaps.bodies, flaps), sections, query)!);
    expect(up.speed).toBeCloseTo(one, 9);
    expect(down.limit.angle).toBeLessThan(up.limit.angle);
    // Handbooks: 0.9 × what the section gains × the flapped share of the area (D. P. Raymer, Aircraft Design, ch. 12; from memory).
    // The first strip to reach its limit ends it here, so some of that is lost.
    const [plain, turned] = [sections({ shape: { type: "flat", thickness: 0 } }, 1.2e5)!].flatMap((one) => [one, flapped(one, { chordShare: 0.25, deflection: 30 * degree })]);
    const handbook = 0.9 * (turned.liftMax - plain.liftMax) * 0.5;
    const gain = down.limit.liftCoefficient - up.limit.liftCoefficient;
    expect(gain).toBeGreaterThan(0.5 * handbook);
    expect(gain).toBeLessThan(handbook);
  });

  it("of a canard is where it or the wing is first at its limit, and both are told", () => {
    const duck = (digits: string) => basisOf([
      tapered(1.6, 0.22, 0.18, 0.05), withControls(
        mirrored([[-0.5, 0, 0.05, 0.12, 4 * degree], [-0.5, 0.25, 0.05, 0.1, 4 * degree]], { kind: "canard", shape: { type: "naca", digits } }),
        control("elevator", { throws: { up: 20 * degree, down: 20 * degree } })),
    ]);
    const { limit, limits } = stallSpeed(duck("2412"), sections, { ...query, cgX: -0.05 })!;
    expect(limit.kind).toBe("canard");
    expect(limits.map(({ kind }) => kind)).toEqual(["canard", "wing"]);
    expect(limits[0].liftCoefficient).toBeLessThan(limits[1].liftCoefficient);
  });

  it("tells a tailplane that stalls pushing down", () => {
    const weak: SectionsAir = (section, reynolds) => ({ ...sections(section, reynolds)!, liftMin: section.shape.type === "naca" && section.shape.digits === "0009" ? -0.25 : -0.9 });
    const limits = liftLimits(basis, airAt(basis, weak, { speed: 10, air })!, { cgX: 0.16 });
    expect(limits.find(({ kind }) => kind === "tailplane")).toMatchObject({ sense: "down" });
  });

  it("stays unknown while any section is, and every section has been asked for", () => {
    const asked = new Set<number>();
    const pending: SectionsAir = (_, reynolds) => void asked.add(Math.round(reynolds));
    expect(stallSpeed(basis, pending, query)).toBeUndefined();
    expect(asked.size).toBe(new Set(basis.lookups.map(({ chord }) => chord.toPrecision(9))).size);
    expect(levelState(basis, pending, { ...query, speed: 12 })).toBeUndefined();
    expect(forwardLimit(basis, pending, query)).toBeUndefined();
  });

  it("without a pitch control it is that of the wing, the stick in the middle", () => {
    const board = basisOf([tapered(1.5, 0.2, 0.2, 0)]);
    expect(stallSpeed(board, sections, { ...query, cgX: 0.04 })!.limit.pitch).toBe(0);
    expect(forwardLimit(board, sections, query)).toBeUndefined();
  });
});

describe("forward limit", () => {
  const limit = forwardLimit(basis, sections, query)!;

  it("is where full stick just trims at the stall", () => {
    expect(limit.rule).toBe("stall");
    const stall = stallSpeed(basis, sections, { ...query, cgX: limit.x })!;
    expect(stall.limit.pitch).toBeCloseTo(1, 4);
    expectNear(stall.speed, limit.stall.speed, 1e-5);
    // A little farther ahead it does not reach; farther aft there is stick left.
    expect(stallSpeed(basis, sections, { ...query, cgX: limit.x - 0.02 })!.limit.pitch).toBeGreaterThan(1);
    expect(stallSpeed(basis, sections, { ...query, cgX: limit.x + 0.02 })!.limit.pitch).toBeLessThan(1);
  });

  it("lies farther ahead with more throw", () => {
    const more = trainer({ throws: { up: 25 * degree, down: 12 * degree } });
    expect(forwardLimit(basisOf(more.surfaces, more.bodies), sections, query)!.x).toBeLessThan(limit.x);
    const power = elevatorPower(basis, 0.27)!;
    expect(power.noseUp.moment).toBeGreaterThan(0);
    expect(power.noseDown.moment).toBeLessThan(0);
  });

  it("on a nose wheel moments about the main wheels balance at 1.1 × stall", () => {
    const stance = { x: 0.36, z: -0.15, angle: 2 * degree, noseWheel: true };
    const { rotation, rule, x } = forwardLimit(basis, sections, { ...query, stance })!;
    const pressure = 0.5 * air.density * (1.1 * limit.stall.speed) ** 2;
    const lifting = pressure * stateOf(basis, { angle: stance.angle, pitch: 1 }).moment(stance.x, stance.z);
    // Weight acts through the balance point, in axes along the ground.
    const arm = (stance.x - rotation!.x) * Math.cos(stance.angle) - (query.cgZ - stance.z) * Math.sin(stance.angle);
    expectNear(1.8 * gravity * arm, lifting, 1e-9);
    expect([x, rule]).toEqual(rotation!.x > limit.x ? [rotation!.x, "rotation"] : [limit.x, "stall"]);
    // Main wheels farther back make the nose heavier to lift.
    expect(forwardLimit(basis, sections, { ...query, stance: { ...stance, x: 0.6 } })!.rule).toBe("rotation");
    expect(forwardLimit(basis, sections, { ...query, stance: { ...stance, noseWheel: false } })!.rotation).toBeUndefined();
  });
});

describe("stance on the ground", () => {
  const wheels = (...contacts: Vec3[]) => groundStance(contacts.map((contact) => ({ contact, kind: "wheel", steer: false })));
  it("on a nose wheel of the same height stands level, on a taller one nose up", () => {
    expect(wheels([0, 0, -0.2], [0.3, 0.2, -0.2], [0.3, -0.2, -0.2])).toEqual({ x: 0.3, z: -0.2, angle: 0, noseWheel: true });
    expect(wheels([0, 0, -0.23], [0.3, 0.2, -0.2], [0.3, -0.2, -0.2])!.angle).toBeCloseTo(Math.atan(0.1), 12);
  });
  it("on a tail skid stands nose up", () => {
    const found = wheels([0.15, 0.13, -0.21], [0.15, -0.13, -0.21], [0.89, 0, -0.05])!;
    expect(found.noseWheel).toBe(false);
    expect(found.angle).toBeCloseTo(Math.atan(0.16 / 0.74), 12);
  });
  it("is unknown without main wheels or with nothing besides", () => {
    expect(wheels([0, 0, -0.2], [0.8, 0, -0.2])).toBeUndefined();
    expect(wheels([0.3, 0.2, -0.2], [0.3, -0.2, -0.2])).toBeUndefined();
    expect(wheels()).toBeUndefined();
  });
});

describe("level flight", () => {
  const state = levelState(basis, sections, { ...query, speed: 13 })!;

  it("carries the weight, trimmed", () => {
    expectNear(state.liftCoefficient * 0.5 * air.density * 13 ** 2 * basis.reference.area, 1.8 * gravity, 1e-9);
    expect(state.moment).toBeCloseTo(0, 12);
    expect([state.trimmed, state.stalled]).toEqual([true, false]);
    expect(state.deflections.map(({ path }) => path)).toEqual(["elevator"]);
  });

  it("its induced drag is that of its trimmed load, its profile drag that of each strip and of the fin at no lift", () => {
    const held = trimAt(basis, { ...query, liftCoefficient: state.liftCoefficient })!;
    expectNear(state.induced * basis.reference.area, held.inducedDrag, 1e-12);
    let area = 0;
    basis.strips.forEach(({ chord, length, inside, flap }, i) => {
      const one = sections({ shape: { type: "flat", thickness: 0 } }, reynoldsOf({ speed: 13, air }, chord))!;
      const there = flap ? flapped(one, { chordShare: flap.chordShare, deflection: held.deflections[0].angle }) : one;
      if (!inside) area += there.drag(held.liftCoefficients[i]) * chord * length;
    });
    const fin = 0.012 * 0.19 * 0.125;
    expectNear(state.profile * basis.reference.area, area + fin, 1e-9);
    expectNear(state.profileDrag.surfaces.get("fin")!, fin, 1e-9);
    expect(basis.strips.some(({ inside }) => inside)).toBe(true);
  });

  it("says where it is past the stall, and by how much the stick falls short", () => {
    const stall = stallSpeed(basis, sections, query)!.speed;
    expect(levelState(basis, sections, { ...query, speed: 0.99 * stall })!.stalled).toBe(true);
    expect(levelState(basis, sections, { ...query, speed: 1.01 * stall })!.stalled).toBe(false);
    expect(levelState(basis, sections, { ...query, cgX: 0.1, speed: 9 })!.pitch).toBeGreaterThan(1);
  });

  it("without a pitch control is held and says what moment is left", () => {
    const board = basisOf([tapered(1.5, 0.2, 0.2, 0), single([[0.8, 0, 0, 0.1], [0.8, 0, 0.1, 0.1]], { kind: "fin" })]);
    const found = levelState(board, sections, { ...query, speed: 15 })!;
    expect([found.trimmed, found.pitch]).toEqual([false, 0]);
    expect(Math.abs(found.moment)).toBeGreaterThan(1e-4);
  });
});
