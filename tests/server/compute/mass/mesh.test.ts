import { describe, expect, it } from "vitest";
import { bodyShell, bodySides, bodyVolume } from "../../../../server/compute/mass/body";
import { addMoments, addPoint, noMoments, scaled, type Moments } from "../../../../server/compute/mass/moments";
import { panelSkin, panelVolume } from "../../../../server/compute/mass/panel";
import { propertiesOf } from "../../../../server/compute/mass/properties";
import { sectionSlices } from "../../../../server/compute/mass/section";
import { sectionOutline } from "../../../../server/compute/mass/section-outline";
import { sparMoments } from "../../../../server/compute/mass/solids";
import type { Panel, Station, Vec3 } from "../../../../server/model/design/geometry";
import { body, naca, panel } from "./parts";

/** The same shapes cut into fine triangles and tetrahedra. */
type Outline = readonly Vec3[];

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec3, b: Vec3): Vec3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** Triangles between neighbouring outlines; each triangle's mass sits at the middles of its edges, which is exact for second moments. */
function surfaceMesh(outlines: readonly Outline[]): Moments {
  const sum = noMoments();
  eachTriangle(outlines, (a, b, c) => {
    const area = Math.hypot(...cross(minus(b, a), minus(c, a))) / 2;
    for (const [p, q] of [[a, b], [b, c], [c, a]]) addPoint(sum, area / 3, (p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2);
  });
  return sum;
}

/** Tetrahedra from the middle of the first outline to every triangle of the surface, closed at ends and trailing edge, their signed volumes summed. */
function volumeMesh(open: readonly Outline[]): Moments {
  const outlines = open.map((o) => [...o, o[0]]);
  const middle = (o: Outline): Vec3 => [0, 1, 2].map((i) => o.reduce((s, p) => s + p[i], 0) / o.length) as unknown as Vec3;
  const first = outlines[0];
  const last = outlines[outlines.length - 1];
  const apex = middle(first);
  const closed = [first.map(() => apex), ...outlines, last.map(() => middle(last))];
  const sum = noMoments();
  eachTriangle(closed, (a, b, c) => {
    const [u, v, w] = [minus(a, apex), minus(b, apex), minus(c, apex)];
    const volume = (u[0] * cross(v, w)[0] + u[1] * cross(v, w)[1] + u[2] * cross(v, w)[2]) / 6;
    // Exact to the second degree: 1/20 at each corner and 4/5 at the middle.
    for (const p of [apex, a, b, c]) addPoint(sum, volume / 20, ...p);
    addPoint(sum, (volume * 4) / 5, (apex[0] + a[0] + b[0] + c[0]) / 4, (apex[1] + a[1] + b[1] + c[1]) / 4, (apex[2] + a[2] + b[2] + c[2]) / 4);
  });
  return sum.mass < 0 ? scaled(sum, -1) : sum;
}

function eachTriangle(outlines: readonly Outline[], use: (a: Vec3, b: Vec3, c: Vec3) => void): void {
  for (let i = 1; i < outlines.length; i++) {
    for (let j = 1; j < outlines[i].length; j++) {
      const [a, b, c, d] = [outlines[i - 1][j - 1], outlines[i - 1][j], outlines[i][j], outlines[i][j - 1]];
      use(a, b, c);
      use(a, c, d);
    }
  }
}

function agree(computed: Moments, mesh: Moments, share: number): void {
  const a = propertiesOf(computed);
  const b = propertiesOf(mesh);
  if (!a || !b) throw new Error("an empty shape");
  const size = Math.sqrt((b.inertia.xx + b.inertia.yy + b.inertia.zz) / b.mass);
  expect(Math.abs(a.mass / b.mass - 1)).toBeLessThan(share);
  for (const i of [0, 1, 2] as const) expect(Math.abs(a.cg[i] - b.cg[i])).toBeLessThan(share * size);
  for (const i of ["xx", "yy", "zz", "xy", "xz", "yz"] as const) expect(Math.abs(a.inertia[i] - b.inertia[i])).toBeLessThan(share * b.mass * size ** 2);
}

/** A panel's outlines from root to tip, each point going straight across. Nose-up twist drops the trailing edge. */
function panelOutlines({ inner, outer }: Panel, steps: number): Outline[] {
  const [, dy, dz] = minus(outer.leadingEdge, inner.leadingEdge);
  const span = Math.hypot(dy, dz);
  const up: Vec3 = [0, -dz / span, dy / span];
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const lerp = (pick: (s: Station) => number) => pick(inner) + t * (pick(outer) - pick(inner));
    const [sin, cos] = [Math.sin(lerp((s) => s.twist)), Math.cos(lerp((s) => s.twist))];
    return sectionOutline(inner.section.shape).map(([x, y]): Vec3 => {
      const chord = lerp((s) => s.chord);
      const aft = chord * (x * cos + y * sin);
      const rise = chord * (y * cos - x * sin);
      return [lerp((s) => s.leadingEdge[0]) + aft, lerp((s) => s.leadingEdge[1]) + rise * up[1], lerp((s) => s.leadingEdge[2]) + rise * up[2]];
    });
  });
}

describe("a panel against a fine mesh", () => {
  const swept = panel({
    from: [0.2, 0.05, 0.03], span: 0.7, chord: [0.25, 0.14], offset: 0.12, dihedral: 0.15, twist: [0.05, -0.02], shape: naca("4415"),
  });
  const plain = panel({ from: [0.2, 0, 0], span: 0.7, chord: [0.25, 0.25], shape: naca("2412") });

  it("straight: skin and volume to rounding, both cut from the same outline", () => {
    agree(panelSkin({ panel: plain, side: "right" }, sectionSlices()), surfaceMesh(panelOutlines(plain, 1)), 1e-9);
    agree(panelVolume({ panel: plain, side: "right" }, sectionSlices()), volumeMesh(panelOutlines(plain, 1)), 1e-9);
  });

  it("swept, tapered, twisted, with dihedral: volume to 0.01 %, skin to 0.1 % as the faces' slope along the span is left out", () => {
    agree(panelVolume({ panel: swept, side: "right" }, sectionSlices()), volumeMesh(panelOutlines(swept, 200)), 1e-4);
    agree(panelSkin({ panel: swept, side: "right" }, sectionSlices()), surfaceMesh(panelOutlines(swept, 200)), 1e-3);
  });
});

describe("a body against a fine mesh", () => {
  const stations = [{ x: 0, width: 0.03, height: 0.05, z: 0 }, { x: 0.2, width: 0.1, height: 0.13, z: 0.02 }, { x: 0.9, width: 0.04, height: 0.03, z: -0.01 }];
  const nose: Vec3 = [-0.1, 0.02, 0.01];
  const outlineOf = (shape: readonly (readonly [number, number])[]): Outline[] => Array.from({ length: 2 }, (_, part) => Array.from({ length: 101 }, (_, i) => {
    const [a, b] = [stations[part], stations[part + 1]];
    const lerp = (pick: (s: typeof a) => number) => pick(a) + (i / 100) * (pick(b) - pick(a));
    return shape.map(([y, z]): Vec3 => [
      nose[0] + lerp((s) => s.x), nose[1] + (y * lerp((s) => s.width)) / 2, nose[2] + lerp((s) => s.z) + (z * lerp((s) => s.height)) / 2,
    ]);
  })).flat();

  const oval = Array.from({ length: 721 }, (_, i) => [Math.cos((i * Math.PI) / 360), Math.sin((i * Math.PI) / 360)] as const);
  const box = [[1, -1], [1, 1], [-1, 1], [-1, -1], [1, -1]] as const;

  it("oval: sides and volume to 0.01 %", () => {
    const form = body(stations, { nose, shape: "oval" });
    agree(bodySides(form), surfaceMesh(outlineOf(oval)), 1e-4);
    agree(bodyVolume(form), volumeMesh(outlineOf(oval)), 1e-4);
  });

  it("box: sides, ends and volume to rounding", () => {
    const form = body(stations, { nose, shape: "box" });
    agree(bodySides(form), surfaceMesh(outlineOf(box)), 1e-9);
    agree(bodyVolume(form), volumeMesh(outlineOf(box)), 1e-9);
    expect(bodyShell(form).mass - bodySides(form).mass).toBeCloseTo(0.03 * 0.05 + 0.04 * 0.03, 12);
  });
});

describe("a tapering spar against thin slices", () => {
  const slices = (area: (t: number) => readonly [area: number, axial: number, across: number]): Moments => {
    const sum = noMoments();
    const n = 4000;
    for (let i = 0; i < n; i++) {
      const t = (i + 0.5) / n;
      const [a, aroundWidth, aroundHeight] = area(t);
      const slice = noMoments();
      addPoint(slice, a / n, 0.3, t, 0);
      slice.xx += aroundWidth / n;
      slice.zz += aroundHeight / n;
      addMoments(sum, slice);
    }
    return sum;
  };

  it("tube 12 to 8 mm with a bore of 10 to 7 mm", () => {
    const computed = sparMoments({ start: [0.3, 0, 0], end: [0.3, 1, 0], section: { type: "tube", outer: [0.012, 0.008], inner: [0.01, 0.007] } });
    // 4,000 slices: their step leaves 1e-7.
    agree(computed, slices((t) => {
      const [d, b] = [0.012 - 0.004 * t, 0.01 - 0.003 * t];
      const second = (Math.PI / 64) * (d ** 4 - b ** 4);
      return [(Math.PI / 4) * (d * d - b * b), second, second];
    }), 1e-6);
  });

  it("bar, width 12 to 6 mm along x and height 20 to 10 mm along z", () => {
    const computed = sparMoments({ start: [0.3, 0, 0], end: [0.3, 1, 0], section: { type: "bar", width: [0.012, 0.006], height: [0.02, 0.01] } });
    const mesh = slices((t) => {
      const [w, h] = [0.012 - 0.006 * t, 0.02 - 0.01 * t];
      return [w * h, (w ** 3 * h) / 12, (w * h ** 3) / 12];
    });
    agree(computed, mesh, 1e-6);
    // Its own thickness is small beside its length: the axial moment shows which way up it lies.
    expect(computed.zz / mesh.zz).toBeCloseTo(1, 6);
  });
});
