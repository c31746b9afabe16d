import { describe, expect, it } from "vitest";
import { bodyPieces, box, hull, thinPanel } from "../../../../server/compute/convex/shapes";
import { bladeDepth, discAbove, discClearance, discGap, discOf, type Disc } from "../../../../server/compute/propeller/disc";
import type { Body, Panel, Vec3 } from "../../../../server/model/design/geometry";
import { expectNear } from "../../../published/near";
import { inch, propellerOf } from "../../../published/propeller-data";

const exact = 1e-9;
const disc = (hub: Vec3, axis: Vec3 = [-1, 0, 0], depth = 0.018): Disc => ({ hub, axis, radius: 7 * inch, depth });

describe("two 14 in discs", () => {
  it("on shafts 18 in apart leave 4 in between the tips", () => {
    expectNear(discGap(disc([0, -9 * inch, 0]), disc([0, 9 * inch, 0])), 4 * inch, exact);
    expectNear(discGap(disc([0, -9 * inch, 0]), disc([0.01, 9 * inch, 0])), 4 * inch, exact); // passing within the blades' depth
  });

  it("on shafts 12 in apart overlap by 2 in, in height too", () => {
    expectNear(discGap(disc([0, -6 * inch, 0]), disc([0.01, 6 * inch, 0])), -2 * inch, exact);
    expectNear(discGap(disc([0, 0, 0]), disc([0, 0, 12 * inch])), -2 * inch, exact);
  });

  it("one behind the other are apart by what is between their depths", () => {
    expectNear(discGap(disc([0, -6 * inch, 0]), disc([0.1, 6 * inch, 0])), 0.1 - 0.018, exact);
    expectNear(discGap(disc([0, -9 * inch, 0]), disc([0.1, 9 * inch, 0])), Math.hypot(4 * inch, 0.082), exact);
  });

  it("toed in by 2 degrees come closer, by the tilt of rims and blades", () => {
    const [c, s] = [Math.cos(Math.PI / 90), Math.sin(Math.PI / 90)];
    const gap = discGap(disc([0, -9 * inch, 0], [-c, s, 0]), disc([0, 9 * inch, 0], [-c, -s, 0]));
    expectNear(gap, 2 * (9 * inch - 7 * inch * c - 0.009 * s), exact);
  });

  it("do not care which is which", () => {
    const [a, b] = [disc([0, -0.3, 0.02], [-1, 0, 0]), disc([0.07, 0.25, 0], [-Math.cos(0.1), 0, -Math.sin(0.1)])];
    expectNear(discGap(a, b), discGap(b, a), exact);
  });
});

describe("over the ground", () => {
  it("level: hub height less the radius", () => expectNear(discAbove(disc([0, 0, 0.25]), [0, 0, 0], [0, 0, 1]), 0.25 - 7 * inch, exact));
  it("negative where it digs in", () => expect(discAbove(disc([0, 0, 0.1]), [0, 0, 0], [0, 0, 1])).toBeLessThan(0));
  it("tail down, the plane of the ground leaning: as turned by hand", () => {
    const lean = 0.2;
    const up: Vec3 = [Math.sin(lean), 0, Math.cos(lean)];
    const low = 7 * inch * Math.cos(lean) + 0.009 * Math.sin(lean);
    expectNear(discAbove(disc([0, 0, 0.3]), [0, 0, 0], up), 0.3 * Math.cos(lean) - low, exact);
  });
});

describe("to other things", () => {
  it("a box ahead, beside and in it", () => {
    expectNear(discClearance(disc([0, 0, 0]), box([0.2, 0, 0], [0.2, 0.1, 0.1])), 0.1 - 0.009, exact);
    expectNear(discClearance(disc([0, 0, 0]), box([0, 0.4, 0], [0.2, 0.1, 0.1])), 0.35 - 7 * inch, 1e-6); // flat against round: slower
    expect(discClearance(disc([0, 0, 0]), box([0, 0.1, 0], [0.2, 0.02, 0.02]))).toBe(0);
  });

  it("a point", () => expectNear(discClearance(disc([0, 0, 0]), hull([[0, 0.3, 0.4]])), 0.5 - 7 * inch, exact));

  const body = (shape: Body["shape"]): Body => ({
    path: "hull", kind: "fuselage", nose: [-0.1, 0.4, 0], shape,
    stations: [{ x: 0, width: 0.1, height: 0.16, z: 0 }, { x: 0.3, width: 0.1, height: 0.16, z: 0 }],
  });

  it("a body beside it: round side nearer than a box's corner is none", () => {
    for (const shape of ["oval", "box"] as const) {
      const [piece] = bodyPieces(body(shape));
      expectNear(discClearance(disc([0, 0, 0]), piece), 0.35 - 7 * inch, 1e-6);
    }
    // From above and aside the corner of the box is nearer than the oval.
    const above = disc([0, 0, 0.4]);
    expect(discClearance(above, bodyPieces(body("box"))[0])).toBeLessThan(discClearance(above, bodyPieces(body("oval"))[0]));
  });

  it("a tapering oval body: as found by trying points of its skin", () => {
    const taper: Body = { ...body("oval"), stations: [{ x: 0, width: 0.02, height: 0.02, z: 0 }, { x: 0.2, width: 0.1, height: 0.12, z: 0.01 }] };
    const one = disc([0, 0, 0.05]);
    let nearest = Infinity;
    for (let i = 0; i <= 400; i++) {
      const share = i / 400;
      for (let j = 0; j < 720; j++) {
        const angle = (j * Math.PI) / 360;
        const y = 0.4 + (0.01 + 0.04 * share) * Math.cos(angle);
        const z = 0.01 * share + (0.01 + 0.05 * share) * Math.sin(angle);
        const outward = Math.max(0, Math.hypot(y, z - 0.05) - one.radius);
        nearest = Math.min(nearest, Math.hypot(outward, Math.max(0, Math.abs(-0.1 + 0.2 * share) - 0.009)));
      }
    }
    expect(Math.abs(discClearance(one, bodyPieces(taper)[0]) - nearest)).toBeLessThan(2e-5); // m: the grid's fineness
  });

  it("a panel behind it: to its leading edge", () => {
    const station = (y: number) => ({ leadingEdge: [0.08, y, 0] as Vec3, chord: 0.2, twist: 0, section: { shape: { type: "flat" as const, thickness: 0.03 } } });
    const panel: Panel = { name: "inner", inner: station(0), outer: station(0.5) };
    expectNear(discClearance(disc([0, 0.2, 0]), thinPanel(panel)), 0.08 - 0.009, exact);
    expect(discClearance(disc([0.1, 0.2, 0]), thinPanel(panel))).toBe(0);
  });
});

it("the disc of a powerplant is as deep as its blades", () => {
  const plant = { path: "nose", hub: [0, 0, 0] as Vec3, thrustAxis: [-1, 0, 0] as Vec3, pusher: false };
  expect(discOf(plant)).toBeUndefined();
  const stations = [0.2, 1].map((radius) => ({ radius, chord: 0.2, angle: Math.PI / 6 }));
  const propeller = { ...propellerOf(10, 6, "thin"), stations };
  expectNear(bladeDepth(propeller), 0.2 * 5 * inch * 0.5, exact);
  expect(discOf({ ...plant, propeller })?.radius).toBeCloseTo(5 * inch, 12);
});
