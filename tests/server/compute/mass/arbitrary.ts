import * as fc from "fast-check";
import type { Body, BodyStation, Load, Member, Panel, Surface, Vec3 } from "../../../../server/model/design/geometry";
import type { MassParts } from "../../../../server/compute/mass/element";
import { body, imageOf, load, naca, panel, parts, tube, wing } from "./parts";

/** Sizes of model aircraft, in m, kg and rad. */
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const place: fc.Arbitrary<Vec3> = fc.tuple(between(-1, 1), between(-1, 1), between(-0.3, 0.3));

const sections = fc.constantFrom(naca("0012"), naca("4412"), naca("23015"), { type: "flat", thickness: 0.03 } as const);

const panels: fc.Arbitrary<Panel> = fc.record({
  from: place, span: between(0.1, 1), chord: fc.tuple(between(0.05, 0.4), between(0.05, 0.4)), offset: between(-0.1, 0.3),
  dihedral: between(-0.2, 1.5), twist: fc.tuple(between(-0.1, 0.1), between(-0.1, 0.1)), shape: sections,
}).map(panel);

const skins = fc.oneof(
  fc.record({ density: between(30, 1300), wall: between(3e-4, 2e-3), ribSpacing: between(0.02, 0.1), infill: between(0, 0.2) }),
  fc.record({ arealDensity: between(0.05, 1) }),
);

/** Always of both sides, mirrored; weighed, or built from a skin and a pair of tubes. */
export const surface: fc.Arbitrary<Surface> = fc.oneof(
  fc.tuple(panels, panels, between(0.05, 2), fc.option(between(0, 0.2), { nil: undefined })).map(([a, b, weight, balance]) =>
    wing([{ ...a, name: "inner" }, { ...b, name: "outer" }], { weight, balance })),
  fc.tuple(panels, skins, place, place).map(([p, skin, a, b]) => wing([p], {
    skin,
    spars: [tube("main.tube.right", a, b, 0.01, 0.008, 1500), tube("main.tube.left", imageOf(a), imageOf(b), 0.01, 0.008, 1500)],
  })),
);

const stations: fc.Arbitrary<readonly BodyStation[]> = fc.array(
  fc.record({ width: between(0.02, 0.2), height: between(0.02, 0.2), z: between(-0.05, 0.05), step: between(0.02, 0.4) }), { minLength: 2, maxLength: 4 },
).map((list) => {
  let x = 0;
  return list.map(({ step, ...rest }) => ({ ...rest, x: (x += step) }));
});

export const hull: fc.Arbitrary<Body> = fc.tuple(stations, place, fc.constantFrom("round", "oval", "box"), fc.oneof(
  between(0.05, 1).map((weight) => ({ weight })), skins.map((skin) => ({ skin })),
)).map(([list, nose, shape, weighs]) => body(list, { nose, shape, ...weighs }));

export const member: fc.Arbitrary<Member> = fc.tuple(place, place, between(0.005, 0.1))
  .map(([start, end, weight]) => ({ path: "strut", kind: "strut", start, end, weight }));

export const item: fc.Arbitrary<Load> = fc.tuple(between(0.005, 1), place, fc.option(fc.tuple(between(0.01, 0.2), between(0.01, 0.2), between(0.01, 0.2)), { nil: undefined }))
  .map(([weight, at, size]) => load("item", weight, at, size));

export const design: fc.Arbitrary<MassParts> = fc.record({
  surfaces: fc.array(surface, { maxLength: 2 }), bodies: fc.array(hull, { maxLength: 2 }), members: fc.array(member, { maxLength: 2 }),
  loads: fc.array(item, { minLength: 1, maxLength: 5 }), allowance: between(0, 0.2),
}).map(parts);

/** Every place of a design put through `f`; lengths that are no places stay. */
export function placesThrough(d: MassParts, f: (p: Vec3) => Vec3): MassParts {
  return {
    ...d,
    surfaces: d.surfaces.map((s) => ({
      ...s,
      halves: s.halves.map((h) => ({
        ...h,
        panels: h.panels.map((p) => ({
          ...p,
          inner: { ...p.inner, leadingEdge: f(p.inner.leadingEdge) },
          outer: { ...p.outer, leadingEdge: f(p.outer.leadingEdge) },
        })),
      })),
      spars: s.spars.map((spar) => ({ ...spar, start: f(spar.start), end: f(spar.end) })),
    })),
    bodies: d.bodies.map((b) => ({ ...b, nose: f(b.nose) })),
    members: d.members.map((m) => ({ ...m, start: f(m.start), end: f(m.end) })),
    loads: d.loads.map((l) => ({ ...l, at: f(l.at) })),
  };
}
