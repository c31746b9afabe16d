import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { MassParts } from "../../../../server/compute/mass/element";
import { massElements } from "../../../../server/compute/mass/elements";
import { massProperties, type MassProperties } from "../../../../server/compute/mass/properties";
import { hull, item, design, member, place, placesThrough, surface } from "./arbitrary";
import { imageOf, parts } from "./parts";

function weigh(d: MassParts): MassProperties {
  const found = massProperties(massElements(d));
  if (!found) throw new Error("nothing weighs anything");
  return found;
}

/** Rounding of sums over places within 10 m, at the scale `of`. */
const close = (actual: number, expected: number, of: number) => expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-10 * of);

const axes = ["xx", "yy", "zz", "xy", "xz", "yz"] as const;

const scale = (p: MassProperties) => p.inertia.xx + p.inertia.yy + p.inertia.zz + p.mass;

describe("mass properties of any design", () => {
  it("moved by a vector: the CG goes with it, mass and inertia stay", () => {
    fc.assert(fc.property(design, place, (d, by) => {
      const before = weigh(d);
      const after = weigh(placesThrough(d, ([x, y, z]) => [x + by[0], y + by[1], z + by[2]]));
      close(after.mass, before.mass, before.mass);
      for (const axis of [0, 1, 2] as const) close(after.cg[axis], before.cg[axis] + by[axis], 1);
      for (const axis of axes) close(after.inertia[axis], before.inertia[axis], scale(before));
    }));
  });

  it("mirrored in the plane of symmetry: y of the CG and the products with y change sign", () => {
    fc.assert(fc.property(design, (d) => {
      const before = weigh(d);
      const mirrored = placesThrough(d, imageOf);
      const swapped = mirrored.surfaces.map((s) => ({ ...s, halves: s.halves.map((h) => ({ ...h, side: h.side === "right" ? "left" as const : "right" as const })) }));
      const after = weigh({ ...mirrored, surfaces: swapped });
      close(after.cg[0], before.cg[0], 1);
      close(after.cg[1], -before.cg[1], 1);
      for (const axis of ["xx", "yy", "zz", "xz"] as const) close(after.inertia[axis], before.inertia[axis], scale(before));
      for (const axis of ["xy", "yz"] as const) close(after.inertia[axis], -before.inertia[axis], scale(before));
    }));
  });

  it("of mirrored twins: balances at y = 0 with no products across the plane of symmetry", () => {
    const twins = fc.tuple(fc.array(surface, { maxLength: 2 }), hull, member, item).map(([surfaces, b, m, l]) => {
      const one = parts({ bodies: [b], members: [m], loads: [l], allowance: 0.1 });
      const other = placesThrough(one, imageOf);
      return parts({ surfaces, bodies: [b, ...other.bodies], members: [m, ...other.members], loads: [l, ...other.loads], allowance: 0.1 });
    });
    fc.assert(fc.property(twins, (d) => {
      const found = weigh(d);
      close(found.cg[1], 0, 1);
      close(found.inertia.xy, 0, scale(found));
      close(found.inertia.yz, 0, scale(found));
    }));
  });

  it("k times as large with the same materials: CG × k, mass × k³, inertia × k⁵", () => {
    fc.assert(fc.property(surface, hull, fc.double({ min: 0.3, max: 4, noNaN: true }), (s, b, k) => {
      const before = weigh(parts({ surfaces: [s], bodies: [b] }));
      const after = weigh(enlarged(parts({ surfaces: [s], bodies: [b] }), k));
      const size = Math.hypot(...before.cg, 1) * k;
      close(after.mass, before.mass * k ** 3, after.mass);
      for (const axis of [0, 1, 2] as const) close(after.cg[axis], before.cg[axis] * k, size);
      for (const axis of axes) close(after.inertia[axis], before.inertia[axis] * k ** 5, scale(before) * k ** 3 * size ** 2);
    }));
  });

  it("inertia is positive and no moment exceeds the sum of the other two", () => {
    fc.assert(fc.property(design, (d) => {
      const { inertia: i, mass } = weigh(d);
      const slack = -1e-12 * mass; // rounding at metres from the datum
      for (const [a, b, c] of [[i.xx, i.yy, i.zz], [i.yy, i.zz, i.xx], [i.zz, i.xx, i.yy]]) {
        expect(a).toBeGreaterThanOrEqual(slack);
        expect(a + b - c).toBeGreaterThanOrEqual(slack);
      }
      const determinant = i.xx * (i.yy * i.zz - i.yz ** 2) - i.xy * (i.xy * i.zz + i.yz * i.xz) - i.xz * (i.xy * i.yz + i.yy * i.xz);
      expect(i.xx * i.yy - i.xy ** 2).toBeGreaterThanOrEqual(slack);
      expect(determinant).toBeGreaterThanOrEqual(slack);
    }));
  });

  it("of nothing: undefined", () => {
    expect(massProperties([])).toBeUndefined();
    expect(massProperties(massElements(parts()))).toBeUndefined();
  });
});

function enlarged(d: MassParts, k: number): MassParts {
  const places = placesThrough(d, ([x, y, z]) => [k * x, k * y, k * z]);
  const grown = (n: number | undefined, power: number) => (n === undefined ? undefined : n * k ** power);
  const skin = <T extends { readonly skin?: MassParts["surfaces"][number]["skin"] }>({ skin }: T) => skin && {
    ...skin, wall: grown(skin.wall, 1), ribSpacing: grown(skin.ribSpacing, 1), arealDensity: grown(skin.arealDensity, 1),
  };
  return {
    ...places,
    surfaces: places.surfaces.map((s) => ({
      ...s, weight: grown(s.weight, 3), balance: grown(s.balance, 1), skin: skin(s),
      halves: s.halves.map((h) => ({
        ...h,
        panels: h.panels.map((p) => ({ ...p, inner: { ...p.inner, chord: k * p.inner.chord }, outer: { ...p.outer, chord: k * p.outer.chord } })),
      })),
      spars: s.spars.map((spar) => ({ ...spar, section: { type: "tube" as const, outer: [0.01 * k, 0.01 * k] as const, inner: [0.008 * k, 0.008 * k] as const } })),
    })),
    bodies: places.bodies.map((b) => ({
      ...b, weight: grown(b.weight, 3), skin: skin(b),
      stations: b.stations.map((s) => ({ x: k * s.x, width: k * s.width, height: k * s.height, z: k * s.z })),
    })),
  };
}
