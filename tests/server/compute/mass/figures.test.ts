import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensions } from "../../../../grammar/units/dimension";
import { halfWidth, quantity, type Quantity } from "../../../../grammar/units/quantity";
import { massByPath } from "../../../../server/compute/mass/by-path";
import type { MassParts } from "../../../../server/compute/mass/element";
import { massElements } from "../../../../server/compute/mass/elements";
import { massFigures } from "../../../../server/compute/mass/figures";
import { massProperties } from "../../../../server/compute/mass/properties";
import { propagate } from "../../../../server/compute/tolerance/propagate";
import { design } from "./arbitrary";
import { load, panel, parts, wing } from "./parts";
import { q, qLoad, qParts } from "./quantities";

/** Every number of a design made a quantity, with a small tolerance of one of a few variables. */
function withTolerances(x: unknown, share: number, variables: number): MassParts<Quantity> {
  let count = 0;
  const walk = (v: unknown): unknown => {
    if (typeof v === "number") {
      const id = `v${count++ % variables}`;
      return quantity(v, dimensions.ratio, new Map([[id, share * (Math.abs(v) + 0.01)]]));
    }
    if (Array.isArray(v)) return v.map(walk);
    if (typeof v === "object" && v !== null) return Object.fromEntries(Object.entries(v).map(([k, inner]) => [k, walk(inner)]));
    return v;
  };
  return walk(x) as MassParts<Quantity>;
}

const list = (d: MassParts) => {
  const p = massProperties(massElements(d));
  if (!p) throw new Error("nothing weighs anything");
  return { mass: p.mass, x: p.cg[0], y: p.cg[1], z: p.cg[2], ...p.inertia };
};

describe("mass figures with bands", () => {
  it("agree with differences of the whole design, variable by variable", () => {
    fc.assert(fc.property(design, (d) => {
      const banded = withTolerances(d, 1e-4, 7);
      const figures = massFigures(banded);
      const whole = propagate(banded, (s) => list(s as MassParts));
      if (!figures) throw new Error("nothing weighs anything");
      const { mass, cg, inertia } = figures;
      const sizes = { mass: mass.value, length: 1, inertia: inertia.xx.value + inertia.yy.value + inertia.zz.value + 0.1 * mass.value };
      const pairs = [
        [mass, whole.mass, sizes.mass], [cg[0], whole.x, sizes.length], [cg[1], whole.y, sizes.length], [cg[2], whole.z, sizes.length],
        ...(["xx", "yy", "zz", "xy", "xz", "yz"] as const).map((i) => [inertia[i], whole[i], sizes.inertia] as const),
      ] as const;
      for (const [figure, brute, size] of pairs) {
        expect(Math.abs(figure.value - (brute?.value ?? NaN))).toBeLessThanOrEqual(1e-12 * size);
        // Central differences leave the third order: (1e-4)³ with room for steep divisions.
        for (let i = 0; i < 7; i++) {
          const change = (m: ReadonlyMap<string, number> | undefined) => m?.get(`v${i}`) ?? 0;
          expect(Math.abs(change(figure.spread) - change(brute?.spread))).toBeLessThanOrEqual(1e-8 * size);
        }
      }
    }), { numRuns: 50 });
  });

  it("one shared density: bands add; separate ones: root of the sum of squares", () => {
    const surface = (path: string, density: Quantity) => {
      const plain = withTolerances(wing([panel({ span: 0.5, chord: [0.2, 0.2] })], { path }), 0, 1) as unknown as MassParts<Quantity>["surfaces"][number];
      return { ...plain, skin: { density, wall: q(1e-3, "length") } };
    };
    const band = (a: string, b: string) => {
      const found = massFigures(qParts({
        surfaces: [surface("main", q(700, "density", { [a]: 56 })), surface("stab", q(700, "density", { [b]: 56 }))],
      }));
      if (!found) throw new Error("nothing weighs anything");
      return { each: halfWidth(found.byPath.get("main")!.mass), both: halfWidth(found.mass) };
    };
    const shared = band("foam", "foam");
    expect(shared.both).toBeCloseTo(2 * shared.each, 12);
    const separate = band("foam", "other");
    expect(separate.both).toBeCloseTo(Math.SQRT2 * separate.each, 12);
    expect(shared.each).toBeCloseTo(separate.each, 12);
  });

  it("a mirrored pair of one written weight keeps the CG on the plane of symmetry, whatever it weighs", () => {
    const at = (y: number) => [q(0.3, "length"), q(y, "length", { y: y * 0.02 }), q(0, "length")] as const;
    const weight = q(0.022, "mass", { servo: 0.002 });
    const found = massFigures(qParts({ loads: [
      { path: "ail.right", kind: "servo", weight, at: at(0.4) },
      { path: "ail.left", kind: "servo", weight, at: at(-0.4) },
    ] }));
    expect(halfWidth(found!.cg[1])).toBe(0);
    expect(halfWidth(found!.mass)).toBeCloseTo(0.004, 12);
    expect(found!.byPath.get("ail")!.mass.value).toBeCloseTo(0.044, 12);
    expect(found!.byPath.get("ail.left")!.cg[1].value).toBeCloseTo(-0.4, 12);
  });

  it("empty: without what can be taken out; absent when nothing else weighs anything", () => {
    const loads = [qLoad("pack", 0.4, 0.1, 0.004), qLoad("camera", 0.24, 0.06), qLoad("motor", 0.15, 0)];
    expect(massFigures({ ...qParts({ loads }), removable: ["pack", "camera"] })?.empty?.value).toBeCloseTo(0.15, 12);
    expect(massFigures({ ...qParts({ loads }), removable: ["pack", "camera", "motor"] })?.empty).toBeUndefined();
    expect(massFigures({ ...qParts({ loads }), removable: ["pack"] })?.empty?.spread).toBeUndefined();
  });

  it("dimensions are those of mass, length and inertia", () => {
    const found = massFigures(qParts({ loads: [qLoad("a", 1, 0), qLoad("b", 1, 1)] }))!;
    expect(found.mass.dimension).toEqual(dimensions.mass);
    expect(found.cg[0].dimension).toEqual(dimensions.length);
    expect(found.inertia.yy.dimension).toEqual(dimensions.inertia);
    expect(found.inertia.yy.value).toBeCloseTo(0.5, 12);
  });

  it("of nothing: undefined", () => {
    expect(massFigures(qParts())).toBeUndefined();
  });
});

describe("mass by path", () => {
  it("sums what stands under a path, and both of a mirrored pair under the plain name", () => {
    const at = [0, 0, 0] as const;
    const found = massByPath(massElements(parts({ loads: [
      load("pods.right.motor", 0.1, [0, 0.3, 0]), load("pods.left.motor", 0.1, [0, -0.3, 0]), load("pods.right.esc", 0.03, [0, 0.3, 0]),
      load("pods.left.esc", 0.03, [0, -0.3, 0]), load("pack", 0.4, at),
    ] })));
    const mass = (path: string) => found.get(path)?.mass ?? NaN;
    expect(mass("pods")).toBeCloseTo(0.26, 12);
    expect(mass("pods.right")).toBeCloseTo(0.13, 12);
    expect(mass("pods.motor")).toBeCloseTo(0.2, 12);
    expect(mass("pods.left.motor")).toBeCloseTo(0.1, 12);
    expect(mass("pack")).toBeCloseTo(0.4, 12);
    expect(found.get("pods.right")?.cg[1]).toBeCloseTo(0.3, 12);
    expect(found.get("motor")).toBeUndefined();
  });
});
