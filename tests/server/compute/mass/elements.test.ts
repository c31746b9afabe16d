import { describe, expect, it } from "vitest";
import { bodyShell, bodyVolume } from "../../../../server/compute/mass/body";
import type { MassElement, MassParts } from "../../../../server/compute/mass/element";
import { massElements } from "../../../../server/compute/mass/elements";
import { missingWeights } from "../../../../server/compute/mass/missing";
import { panelArea, panelSkin, panelVolume } from "../../../../server/compute/mass/panel";
import { massProperties } from "../../../../server/compute/mass/properties";
import { sectionMoments, sectionSlices } from "../../../../server/compute/mass/section";
import type { Body, Surface } from "../../../../server/model/design/geometry";
import { body, half, load, naca, panel, parts, tube, wing } from "./parts";

const inner = panel({ name: "inner", span: 0.4, chord: [0.25, 0.25] });
const outer = panel({ name: "outer", from: [0, 0.4, 0], span: 0.3, chord: [0.25, 0.15] });
const carbon = tube("main.tube.right", [0.075, 0, 0], [0.075, 0.5, 0], 0.01, 0.008, 1550);

const elementsOf = (surface: Surface, allowance = 0) => massElements(parts({ surfaces: [surface], allowance }));
const bodyElementsOf = (b: Body, allowance = 0) => massElements(parts({ bodies: [b], allowance }));
const sum = (elements: readonly MassElement[], path?: string, kind?: string) =>
  elements.filter((e) => (!path || e.path === path) && (!kind || e.kind === kind)).reduce((m, e) => m + e.moments.mass, 0);

function cg(some: Partial<MassParts>) {
  const found = massProperties(massElements(parts(some)));
  if (!found) throw new Error("nothing weighs anything");
  return found.cg;
}

describe("a weighed surface", () => {
  it("spreads its weight over bare panels by area", () => {
    const elements = elementsOf(wing([inner, outer], { weight: 0.5 }), 0.1);
    expect(sum(elements)).toBeCloseTo(0.5, 12);
    expect(sum(elements, "main.inner") / sum(elements, "main.outer")).toBeCloseTo(panelArea(inner) / panelArea(outer), 12);
  });
  it("with a skin: in proportion to what skin and spars compute to", () => {
    const skin = { density: 700, wall: 0.8e-3 };
    const built = elementsOf(wing([inner, outer], { skin, spars: [carbon] }));
    const weighed = elementsOf(wing([inner, outer], { skin, spars: [carbon], weight: 0.5 }), 0.1);
    expect(sum(weighed)).toBeCloseTo(0.5, 12);
    for (const path of ["main.inner", "main.outer", "main.tube.right"]) {
      expect(sum(weighed, path) / 0.5).toBeCloseTo(sum(built, path) / sum(built), 12);
    }
  });
  it("with spars and weighed panels but no skin: they keep their own, bare panels share the rest", () => {
    const elements = elementsOf(wing([{ ...inner, weight: 0.1 }, outer], { spars: [carbon], weight: 0.5 }));
    const tubeMass = (Math.PI / 4) * (0.01 ** 2 - 0.008 ** 2) * 0.5 * 1550;
    expect(sum(elements, "main.inner")).toBeCloseTo(0.2, 12);
    expect(sum(elements, "main.tube.right")).toBeCloseTo(tubeMass, 12);
    expect(sum(elements, "main.outer")).toBeCloseTo(0.5 - 0.2 - tubeMass, 12);
  });
  it("lighter than its spars: all of it in the spars", () => {
    const elements = elementsOf(wing([inner], { spars: [carbon], weight: 0.01 }));
    expect(sum(elements)).toBeCloseTo(0.01, 12);
    expect(sum(elements, "main.tube.right")).toBeCloseTo(0.01, 12);
  });
  it("balances where it is said to, with its inertia unchanged", () => {
    const at = panel({ from: [0.2, 0, 0.05], span: 0.5, chord: [0.2, 0.2] });
    const free = massProperties(elementsOf(wing([at], { weight: 0.3 })));
    const held = massProperties(elementsOf(wing([at], { weight: 0.3, balance: 0.06 })));
    expect(held?.cg[0]).toBeCloseTo(0.26, 12);
    expect(held?.cg[2]).toBeCloseTo(free?.cg[2] ?? NaN, 12);
    expect(held?.inertia.zz).toBeCloseTo(free?.inertia.zz ?? NaN, 12);
  });
  it("without any area keeps its weight at its root", () => {
    expect(cg({ surfaces: [half([panel({ from: [0.2, 0.1, 0.05], span: 0.5, chord: [0, 0] })], { weight: 0.3 })] })).toEqual([0.2, 0.1, 0.05]);
  });
});

describe("a surface built from its skin", () => {
  const placed = { panel: inner, side: "right" as const };
  const faces = panelSkin(placed, sectionSlices()).mass;
  const volume = panelVolume(placed, sectionSlices()).mass;
  const section = sectionMoments(naca("0012"));

  it("walls: outline × span × wall × density, twice for two sides; allowance on top", () => {
    expect(faces).toBeCloseTo(section.outline.size * 0.25 * 0.4, 12);
    const elements = elementsOf(wing([inner], { skin: { density: 700, wall: 0.8e-3 } }), 0.1);
    expect(sum(elements)).toBeCloseTo(2 * faces * 0.8e-3 * 700 * 1.1, 12);
  });
  it("ribs: a wall of the section inside the skin every spacing; infill of its share", () => {
    const skin = { density: 700, wall: 0.8e-3, ribSpacing: 0.04, infill: 0.05 };
    const inside = volume - faces * 0.8e-3;
    const elements = elementsOf(half([inner], { skin }));
    expect(sum(elements, "main.inner", "fill")).toBeCloseTo(700 * inside * (0.8e-3 / 0.04 + 0.05), 12);
    // Ten ribs in 0.4 m, each the section less its walls.
    const ribs = 10 * 0.8e-3 * 700 * (section.area.size * 0.25 ** 2 - section.outline.size * 0.25 * 0.8e-3);
    expect(sum(elements, "main.inner", "fill")).toBeCloseTo(ribs + 700 * inside * 0.05, 12);
  });
  it("all infill, or walls thicker than the section: a solid block and no more", () => {
    for (const skin of [{ density: 30, infill: 1 }, { density: 30, wall: 0.5e-3, infill: 1 }, { density: 30, wall: 0.1 }, { density: 30, wall: 1e-3, ribSpacing: 1e-4 }]) {
      expect(sum(elementsOf(half([inner], { skin })))).toBeCloseTo(30 * volume, 12);
    }
  });
  it("a material by area weighs that on each face, and on each rib", () => {
    expect(sum(elementsOf(half([inner], { skin: { arealDensity: 0.06 } })))).toBeCloseTo(0.06 * faces, 12);
    const ribbed = elementsOf(half([inner], { skin: { arealDensity: 0.06, ribSpacing: 0.04 } }));
    expect(sum(ribbed, "main.inner", "fill")).toBeCloseTo(10 * 0.06 * section.area.size * 0.25 ** 2, 12);
  });
  it("a weighed panel stands in for its skin, without allowance; spars add, with it", () => {
    const elements = elementsOf(wing([{ ...inner, weight: 0.1 }, outer], { skin: { density: 700, wall: 0.8e-3 }, spars: [carbon] }), 0.1);
    expect(sum(elements, "main.inner")).toBeCloseTo(0.2, 12);
    expect(sum(elements, "main.tube.right")).toBeCloseTo((Math.PI / 4) * (0.01 ** 2 - 0.008 ** 2) * 0.5 * 1550 * 1.1, 12);
    expect(sum(elements, "main.outer", "skin")).toBeGreaterThan(0);
  });
  it("its skin balances where the outline does, near half the chord, and fill where the area does", () => {
    const skin = cg({ surfaces: [wing([inner], { skin: { density: 700, wall: 1e-4 } })] });
    expect(skin[0]).toBeCloseTo((0.25 * section.outline.u) / section.outline.size, 12);
    const solid = cg({ surfaces: [wing([inner], { skin: { density: 30, infill: 1 } })] });
    expect(solid[0]).toBeCloseTo((0.25 * section.area.u) / section.area.size, 12);
  });
  it("camber lifts it on both sides and on a copy lying the other way", () => {
    const cambered = panel({ span: 0.4, chord: [0.25, 0.25], shape: naca("4412") });
    const [, y, z] = cg({ surfaces: [wing([cambered], { weight: 1 })] });
    expect(y).toBeCloseTo(0, 12);
    expect(z).toBeGreaterThan(0.02 * 0.25);
    const only: Surface = { ...wing([]), weight: 1, halves: [{ side: "only", panels: wing([cambered]).halves[1].panels }] };
    expect(cg({ surfaces: [only] })[2]).toBeCloseTo(z, 12);
  });
  it("nose up turns the chord about its leading edge, so the CG goes down with the trailing edge", () => {
    const up = panel({ span: 0.4, chord: [0.2, 0.2], twist: [0.1, 0.1] });
    const [x, , z] = cg({ surfaces: [wing([up], { weight: 1 })] });
    expect(z / x).toBeCloseTo(-Math.tan(0.1), 9);
  });
});

describe("a body", () => {
  const hull = body([{ x: 0, width: 0.08, height: 0.1, z: 0 }, { x: 0.5, width: 0.1, height: 0.12, z: 0.01 }, { x: 0.9, width: 0.04, height: 0.05, z: 0.03 }], { shape: "oval" });

  it("weighed: spread over its surface, ends too, no allowance", () => {
    const elements = bodyElementsOf({ ...hull, weight: 0.31 }, 0.1);
    expect(sum(elements)).toBeCloseTo(0.31, 12);
    const shell = bodyShell(hull);
    expect(massProperties(elements)?.cg[0]).toBeCloseTo(shell.x / shell.mass, 12);
  });
  it("balances where it is said to, aft of the nose", () => {
    expect(cg({ bodies: [{ ...hull, nose: [-0.04, 0, 0], weight: 0.31, balance: 0.4 }] })[0]).toBeCloseTo(0.36, 12);
  });
  it("from its skin: walls, bulkheads every spacing, infill, with allowance", () => {
    const [shell, volume] = [bodyShell(hull).mass, bodyVolume(hull).mass];
    const elements = bodyElementsOf({ ...hull, skin: { density: 1240, wall: 0.8e-3, ribSpacing: 0.1, infill: 0.02 } }, 0.1);
    expect(sum(elements, "hull", "skin")).toBeCloseTo(1.1 * 1240 * shell * 0.8e-3, 12);
    expect(sum(elements, "hull", "fill")).toBeCloseTo(1.1 * 1240 * (volume - shell * 0.8e-3) * (0.008 + 0.02), 12);
  });
});

describe("parts not weighed", () => {
  it("are named: surfaces, panels of one in part weighed, bodies, struts, loads", () => {
    const hull = body([{ x: 0, width: 0.08, height: 0.1, z: 0 }, { x: 0.5, width: 0.1, height: 0.12, z: 0 }]);
    const bare = { path: "item", kind: "item", at: [0, 0, 0] as const };
    const strut = { path: "brace", kind: "strut" as const, start: [0, 0, 0] as const, end: [0, 1, 0] as const };
    const missing = missingWeights(parts({
      surfaces: [
        wing([inner], { path: "bare" }), wing([{ ...inner, weight: 0.1 }, outer], { path: "part" }), wing([inner], { path: "weighed", weight: 1 }),
        wing([inner], { path: "skinned", skin: { density: 700, wall: 1e-3 } }), wing([inner], { path: "hollow", skin: { density: 700, infill: 0 } }),
        wing([inner], { path: "sparred", spars: [carbon] }),
      ],
      bodies: [hull, { ...hull, path: "weighed_hull", weight: 0.2 }],
      members: [strut, { ...strut, path: "weighed_brace", weight: 0.01 }],
      loads: [bare, load("weighed_item", 0.1, [0, 0, 0])],
    }));
    expect(missing).toEqual(["bare", "part.outer", "hollow", "sparred", "hull", "brace", "item"]);
  });
  it("add nothing", () => {
    expect(massElements(parts({ surfaces: [wing([inner])], loads: [{ path: "item", kind: "item", at: [0, 0, 0] }] }))).toEqual([]);
  });
});
