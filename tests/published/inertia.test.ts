import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../server/model/design/geometry";
import { massElements } from "../../server/compute/mass/elements";
import { scaled, type Moments } from "../../server/compute/mass/moments";
import { massProperties, propertiesOf } from "../../server/compute/mass/properties";
import { boxMoments, rodMoments, sparMoments } from "../../server/compute/mass/solids";
import { load, parts, tube } from "../server/compute/mass/parts";
import { expectNear } from "./near";

const inertia = (moments: Moments, mass: number) => {
  const found = propertiesOf(scaled(moments, mass / moments.mass));
  if (!found) throw new Error("nothing weighs anything");
  return found.inertia;
};

describe("standard bodies (closed forms of any handbook of mechanics)", () => {
  // Printed to five figures: 0.1 %.
  it("box 0.300 kg, 140 × 45 × 35 mm", () => {
    const { xx, yy, zz } = inertia(boxMoments([0.19, 0, -0.02], [0.14, 0.045, 0.035]), 0.3);
    expectNear(xx, 8.125e-5, 0.001);
    expectNear(yy, 0.000520625, 0.001);
    expectNear(zz, 0.000540625, 0.001);
  });
  it("slender rod 0.400 kg, 1.2 m: 0.04800 about its centre, 0.19200 about its end", () => {
    const rod = scaled(rodMoments([0, 0, 0], [0, 1.2, 0]), 0.4);
    // Exact but for rounding.
    expect(inertia(rod, 0.4).xx).toBeCloseTo(0.048, 12);
    expect(rod.yy).toBeCloseTo(0.192, 12);
    expect(inertia(rod, 0.4).yy).toBeCloseTo(0, 12);
  });
  it("solid cylinder 0.050 kg, radius 10 mm, 100 mm long", () => {
    const { xx, yy, zz } = inertia(sparMoments(tube("", [0.3, 0, 0], [0.4, 0, 0], 0.02, 0, 1)), 0.05);
    expectNear(xx, 2.5e-6, 0.001);
    expectNear(yy, 4.2917e-5, 0.001);
    expectNear(zz, 4.2917e-5, 0.001);
  });
  it("tube 10 × 8 mm, 0.7 m, 1500 kg/m³: 29.688 g", () => {
    const shape = sparMoments(tube("", [0, 0, 0], [0, 0.7, 0], 0.01, 0.008, 1500));
    expectNear(shape.mass * 1500, 29.688e-3, 0.001);
    const { xx, yy, zz } = inertia(shape, shape.mass * 1500);
    expectNear(xx, 0.0012126, 0.001);
    expectNear(zz, 0.0012126, 0.001);
    expectNear(yy, 6.086e-7, 0.001);
  });
});

describe("a model of nine parts: parallel axes, checked by 20,000 slices", () => {
  const rod = (path: string, weight: number, start: Vec3, end: Vec3) => ({ path, kind: "strut" as const, start, end, weight });
  const model = parts({
    loads: [
      load("motor", 0.18, [0.03, 0, 0]),
      load("controller", 0.05, [0.13, 0, -0.01]),
      load("battery", 0.3, [0.19, 0, -0.02], [0.14, 0.045, 0.035]),
      load("radio", 0.09, [0.4, 0, -0.01]),
      load("fin", 0.03, [0.96, 0, 0.09]),
      load("gear", 0.12, [0.3, 0, -0.14]),
    ],
    members: [
      rod("wing", 0.45, [0.33, -0.75, 0.06], [0.33, 0.75, 0.06]),
      rod("fuselage", 0.35, [0, 0, 0], [1, 0, 0]),
      rod("tailplane", 0.06, [0.93, -0.25, 0.02], [0.93, 0.25, 0.02]),
    ],
  });
  const found = massProperties(massElements(model));

  it("mass, CG and inertia about the CG to 0.05 % (six figures given)", () => {
    if (!found) throw new Error("nothing weighs anything");
    expectNear(found.mass, 1.63, 5e-4);
    expectNear(found.cg[0], 0.3368098, 5e-4);
    expectNear(found.cg[2], 4.1104e-3, 5e-4);
    expectNear(found.inertia.xx, 0.0900517, 5e-4);
    expectNear(found.inertia.yy, 0.102208, 5e-4);
    expectNear(found.inertia.zz, 0.183508, 5e-4);
    expectNear(found.inertia.xz, 0.0037564, 5e-4);
  });

  it("radii of gyration over half-span, half-length and their mean: 0.313, 0.501, 0.537", () => {
    if (!found) throw new Error("nothing weighs anything");
    const radius = (i: number) => Math.sqrt(i / found.mass);
    // Raymer's non-dimensional radii of this case, printed to three figures: half of the last one.
    expect(Math.abs(radius(found.inertia.xx) / 0.75 - 0.313)).toBeLessThan(5e-4);
    expect(Math.abs(radius(found.inertia.yy) / 0.5 - 0.501)).toBeLessThan(5e-4);
    expect(Math.abs(radius(found.inertia.zz) / ((1.5 + 1) / 4) - 0.537)).toBeLessThan(5e-4);
  });
});
