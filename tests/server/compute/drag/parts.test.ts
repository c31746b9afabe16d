import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { parasiteDrag, type DragParts } from "../../../../server/compute/drag/parasite-drag";
import { printedRoughness } from "../../../../server/compute/drag/printed";
import { bodySides } from "../../../../server/compute/mass/body";
import type { Body, Load, Member, Skin, Vec3, Wheel } from "../../../../server/model/design/geometry";
import { conventionalWing, tailAt } from "../designs";
import { fuselage, moved, movedBodies } from "../airframes";
import { hull as anyHull, item, place, surface } from "../mass/arbitrary";

const air = atmosphere({ altitude: 0 })!;
const flow = { speed: 15, air };
const hull = fuselage([-0.04, 0, 0], [[0, 0.02, 0.02], [0.2, 0.096, 0.118], [0.5, 0.096, 0.118], [0.96, 0.03, 0.04]]);
const propeller = { diameter: 0.3, pitch: 0.15, blades: 2, family: "thin", folding: false, clockwise: true } as const;
const wire: Member = { path: "wire", kind: "wire", start: [0.2, 0.05, 0], end: [0.2, 0.4, 0.2], diameter: 0.001 };
const strut: Member = { path: "strut", kind: "strut", start: [0.2, -0.05, 0], end: [0.22, -0.4, 0.2], chord: 0.018 };
const wheel: Wheel = { path: "wheel", kind: "wheel", contact: [0.15, 0.13, -0.21], diameter: 0.07, steer: false };
const skid: Wheel = { path: "skid", kind: "skid", contact: [0.85, 0, -0.08], steer: false };
const pack: Load = { path: "pack", kind: "battery", at: [0.1, 0, -0.3], size: [0.12, 0.04, 0.03] };

const bare: DragParts = { bodies: [], members: [], wheels: [], surfaces: [], powerplants: [] };
const whole: DragParts = {
  bodies: [hull], members: [wire, strut], wheels: [wheel, skid], surfaces: [conventionalWing, tailAt(0.04)],
  powerplants: [{ hub: [-0.06, 0, 0], propeller }], loads: [pack],
};
const areaOf = (parts: DragParts, path: string, at = flow) => parasiteDrag(parts, at).parts.find((part) => part.path === path)?.area;
const scaled = ([x, y, z]: Vec3, by: number): Vec3 => [x * by, y * by, z * by];
const times = (size: number | undefined, by: number) => size === undefined ? undefined : size * by;

function grown(parts: DragParts, by: number): DragParts {
  return {
    surfaces: moved(parts.surfaces, [0, 0, 0], by), bodies: movedBodies(parts.bodies, [0, 0, 0], by),
    members: parts.members.map((m) => ({ ...m, start: scaled(m.start, by), end: scaled(m.end, by), chord: times(m.chord, by), diameter: times(m.diameter, by) })),
    wheels: parts.wheels.map((w) => ({ ...w, contact: scaled(w.contact, by), diameter: times(w.diameter, by) })),
    powerplants: parts.powerplants.map((p) => ({ hub: scaled(p.hub, by), propeller: p.propeller && { ...p.propeller, diameter: p.propeller.diameter * by } })),
    loads: parts.loads?.map((l) => ({ ...l, at: scaled(l.at, by), size: l.size && scaled(l.size, by) })),
  };
}

describe("scaling", () => {
  it("twice the size at half the speed: four times the area, part by part", () => {
    const [small, large] = [parasiteDrag(whole, flow), parasiteDrag(grown(whole, 2), { speed: 7.5, air })];
    expect(large.parts.map(({ path }) => path)).toEqual(small.parts.map(({ path }) => path));
    // The nearest point of a leg is found to a billionth.
    large.parts.forEach(({ area, path }, i) => expect(Math.abs(area / small.parts[i].area - 4), path).toBeLessThan(1e-6));
  });
  it("grows with size at the same speed, by no more than the square", () => {
    for (const by of [1.2, 2, 5]) {
      const share = parasiteDrag(grown(whole, by), flow).area / parasiteDrag(whole, flow).area;
      expect(share).toBeGreaterThan(by);
      expect(share).toBeLessThan(by ** 2);
    }
  });
});

describe("bodies", () => {
  const alone = (body: Body, at = flow) => areaOf({ ...bare, bodies: [body] }, body.path, at)!;
  it("behind a propeller the layer is turbulent from the nose; a pusher leaves it", () => {
    const with1 = (x: number) => areaOf({ ...bare, bodies: [hull], powerplants: [{ hub: [x, 0, 0], propeller }] }, "hull")!;
    expect(with1(-0.06)).toBeGreaterThan(1.05 * alone(hull));
    expect(with1(0.95)).toBe(alone(hull));
  });
  it("sharp edges cost more than the larger wetted surface alone", () => {
    const box = alone({ ...hull, shape: "box" });
    expect(box / alone(hull)).toBeGreaterThan((4 / Math.PI) * 1.2);
  });
  it("a tube's open front counts in the wind, not inside a wing or behind a pod", () => {
    const boom: Body = { ...fuselage([0.3, 0.3, 0.058], [[0, 0.012, 0.012], [0.6, 0.012, 0.012]], "boom"), kind: "boom" };
    const pod: Body = { ...fuselage([0.1, 0.3, 0.058], [[0, 0.02, 0.02], [0.2, 0.02, 0.02]], "pod"), kind: "body" };
    const free = areaOf({ ...bare, bodies: [boom] }, "boom")!;
    const face = 0.8 * 0.012 ** 2 * (Math.PI / 4);
    const inWing = areaOf({ ...bare, bodies: [boom], surfaces: [conventionalWing] }, "boom")!;
    expect(areaOf({ ...bare, bodies: [boom, pod] }, "boom")!).toBeCloseTo(free - face, 9);
    // The wing ahead of it makes the layer turbulent from its front, as a propeller does.
    const blown = areaOf({ ...bare, bodies: [boom], powerplants: [{ hub: [0.29, 0.3, 0.058], propeller }] }, "boom")!;
    expect(inWing).toBeCloseTo(blown - face, 9);
  });
  it("a thinner tail end has less base drag", () => {
    const ended = (size: number) => alone(fuselage([0, 0, 0], [[0, 0.01, 0.01], [0.1, 0.1, 0.1], [0.3, 0.1, 0.1], [0.301, size, size]]));
    expect(ended(0.1)).toBeGreaterThan(ended(0.05));
  });
  it("pressure never more than on a plate across the flow", () => {
    fc.assert(fc.property(anyHull, fc.double({ min: 0.1, max: 60, noNaN: true }), (body, speed) => {
      const largest = Math.max(...body.stations.map(({ width, height }) => width * height));
      const area = alone(body, { speed, air });
      expect(area).toBeGreaterThan(0);
      // Friction is never over 0.042, that of the least Reynolds number there is.
      expect(area).toBeLessThanOrEqual(1.17 * largest + 0.042 * bodySides(body).mass);
    }));
  });
});

describe("struts, wires, gear and loads", () => {
  it("a wire along the flow has little, one aslant less than one across", () => {
    const rod = (end: Vec3) => areaOf({ ...bare, members: [{ ...wire, start: [0, 0, 0], end }] }, "wire")!;
    expect(rod([1, 0, 0])).toBeLessThan(0.03 * rod([0, 1, 0]));
    expect(rod([0.7, 0.7, 0])).toBeLessThan(0.5 * rod([0, 1, 0]));
  });
  it("a faired strut has less than a round one as thick", () => {
    const thick = { ...wire, diameter: 0.018 * 0.25, start: strut.start, end: strut.end };
    expect(areaOf({ ...bare, members: [strut] }, "strut")!).toBeLessThan(0.6 * areaOf({ ...bare, members: [thick] }, "wire")!);
  });
  it("says what it doesn't count", () => {
    const { parts, area } = parasiteDrag({ ...bare, members: [{ ...strut, chord: undefined }], wheels: [{ ...wheel, diameter: undefined }] }, flow);
    expect(parts.map(({ how }) => how)).toEqual([expect.stringContaining("not counted"), expect.stringContaining("not counted")]);
    expect(area).toBe(0);
  });
  it("a leg ends at the nearest body or surface", () => {
    const legs = (bodies: readonly Body[]) => areaOf({ ...bare, bodies, wheels: [wheel], surfaces: [conventionalWing] }, "wheel")!;
    expect(legs([])).toBeGreaterThan(legs([hull]));
  });
  it("a load counts that hangs free, not one inside", () => {
    expect(areaOf(whole, "pack")).toBeCloseTo(1.05 * 0.04 * 0.03, 12);
    for (const at of [[0.3, 0, 0], [0.3, 0.2, 0.07]] as const) expect(areaOf({ ...whole, loads: [{ ...pack, at }] }, "pack")).toBeUndefined();
  });
});

describe("layer lines", () => {
  const printed: Skin = { density: 720, wall: 8e-4 };
  it("count on a wall of a material by volume, not on film", () => {
    const main = (skin: Skin | undefined) => areaOf({ ...whole, surfaces: [{ ...conventionalWing, path: "main", skin }] }, "main");
    expect(main(printed)).toBeGreaterThan(0);
    expect(main({ arealDensity: 0.06 })).toBeUndefined();
    expect(main(undefined)).toBeUndefined();
  });
  it("cost more the higher they are and the faster it flies, and nothing where they are fine", () => {
    const factor = (speed: number, layer: number) => printedRoughness({ speed, air }, 0.2, layer).factor;
    expect(factor(15, 1e-6)).toBe(1);
    expect(factor(15, 0.2e-3)).toBeGreaterThan(1.03);
    expect(factor(15, 0.2e-3)).toBeLessThan(1.3);
    expect(factor(15, 0.3e-3)).toBeGreaterThan(factor(15, 0.2e-3));
    expect(factor(35, 0.2e-3)).toBeGreaterThan(factor(15, 0.2e-3));
  });
  it("a printed hull has more drag than a smooth one", () => {
    expect(areaOf({ ...bare, bodies: [{ ...hull, skin: printed }] }, "hull")!).toBeGreaterThan(areaOf({ ...bare, bodies: [hull] }, "hull")!);
  });
});

it("is finite and not negative for anything, at rest too", () => {
  const wheels = fc.tuple(place, fc.option(fc.double({ min: 0.01, max: 0.2, noNaN: true }), { nil: undefined }))
    .map(([contact, diameter]): Wheel => ({ ...wheel, contact, diameter }));
  const members = fc.tuple(place, place, fc.boolean()).map(([start, end, round]): Member => ({ ...wire, start, end, diameter: round ? 0.002 : undefined, chord: round ? undefined : 0.02 }));
  const designs = fc.record({
    surfaces: fc.array(surface, { maxLength: 2 }), bodies: fc.array(anyHull, { maxLength: 2 }), members: fc.array(members, { maxLength: 2 }),
    wheels: fc.array(wheels, { maxLength: 2 }), loads: fc.array(item, { maxLength: 2 }),
    powerplants: fc.array(place.map((hub) => ({ hub, propeller })), { maxLength: 1 }),
  });
  fc.assert(fc.property(designs, fc.double({ min: 0, max: 80, noNaN: true }), (parts, speed) => {
    const { parts: items, area } = parasiteDrag(parts, { speed, air });
    for (const each of [...items, { path: "all", area }]) expect(Number.isFinite(each.area) && each.area >= 0, each.path).toBe(true);
  }));
});
