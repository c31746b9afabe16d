import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bodyYawSlope } from "../../server/compute/derivatives/body-yaw";
import { lateralSteps } from "../../server/compute/derivatives/lateral";
import { lateralFlowSteps, type Onset } from "../../server/compute/lattice/lateral-flow";
import { solveLattice } from "../../server/compute/lattice/solve-lattice";
import { referenceGeometry } from "../../server/compute/planform/reference-geometry";
import type { Surface } from "../../server/model/design/geometry";
import { fuselage, mirrored, single, type Row } from "../server/compute/airframes";
import { designs } from "../server/compute/designs";
import { finished } from "../server/compute/finished";
import { expectNear } from "./near";

const flowOf = (surfaces: readonly Surface[], density = 1, whole = false) => finished(lateralFlowSteps(surfaces, { density, whole }))!;
const at = { x: 0.25, z: 0 };
const sideslip: Onset = () => [0, -1, 0];
const roll: Onset = (_, y, z) => [0, -z, y];
const yaw: Onset = (x, y) => [-y, x - at.x, 0];

describe("dihedral over the whole span", () => {
  // As for roll damping, linear in a small angle, which here is 0.01: 0.2 %.
  it.each([[6, 1, -0.7313], [6, 0.5, -0.704], [8, 0.5, -0.8128]])("aspect ratio %d, taper %d", (aspectRatio, taper, share) => {
    const root = 2 / (1 + taper);
    const half = aspectRatio / 2;
    const wing = mirrored([[0, 0, 0, root], [(root * (1 - taper)) / 4, half, 0.01 * half, root * taper]]);
    const { sideslip } = finished(lateralSteps(flowOf([wing]), referenceGeometry([wing], [])!))({ lift: 0, ...at });
    expectNear(sideslip.roll / 0.01, share, 2e-3);
  });
});

describe("sweep in lift", () => {
  it("rolls away from the wind by lift × tan Λ × the mean arm of the lift over the span, by simple sweep theory", () => {
    const wing = mirrored([[0, 0, 0, 1], [4 * Math.tan(Math.PI / 6), 4, 0, 1]]);
    const reference = referenceGeometry([wing], [])!;
    const { strips } = solveLattice([wing])!;
    const right = strips.filter(({ side }) => side === "right");
    const weigh = (of: (strip: (typeof right)[number]) => number) => right.reduce((sum, s) => sum + s.circulation.slope * s.width * of(s), 0);
    const arm = weigh(({ y }) => y) / weigh(() => 1);
    const flow = flowOf([wing]);
    const { sideslip } = finished(lateralSteps(flow, reference))({ lift: 0.5, ...at });
    // Every strip's lift changes by its share tan Λ per radian of sideslip: exact but for strips' rows lying at a slope of their own.
    expectNear(sideslip.roll, (-0.5 * Math.tan(Math.PI / 6) * arm) / reference.span, 5e-3);
  });
});

describe("vee tail (P. E. Purser, J. P. Campbell, NACA Report 823)", () => {
  const tail = (aspectRatio: number, slope: number) => {
    const length = (0.15 * aspectRatio) / 2;
    return mirrored([[30, 0, 20, 0.15], [30, length * Math.cos(slope), 20 + length * Math.sin(slope), 0.15]], { kind: "tailplane" });
  };
  const slope = (35 * Math.PI) / 180;
  it("takes cos² of its slope in pitch", () => {
    // 1 %: the rule leaves out how the halves act on each other, which fades with the aspect ratio, here 40: 0.8 % (and 6 % at 4.7).
    expectNear(solveLattice([tail(40, slope)])!.liftSlope, solveLattice([tail(40, 0)])!.liftSlope * Math.cos(slope) ** 2, 0.01);
  });
  it("takes sin² in yaw, times about 0.7 ± 0.05 for its loading (from memory), where it is nearly flat, as that factor supposes", () => {
    const wing = mirrored([[0, 0, 0, 0.25], [0, 1, 0, 0.25]]);
    const side = flowOf([wing, tail(6, 0.05)]).respond(sideslip, 0, at).side;
    const share = -side / (solveLattice([tail(6, 0)])!.liftSlope * Math.sin(0.05) ** 2);
    expect(share).toBeGreaterThan(0.65);
    expect(share).toBeLessThan(0.75);
  });
});

describe("bodies in yaw", () => {
  it("turn away by their side view: Munk's 2 (k2 − k1) volume for a round one", () => {
    const stations = Array.from({ length: 201 }, (_, i) => {
      const angle = (Math.PI * i) / 200;
      return [0.6 * (1 - Math.cos(angle)), 0.2 * Math.sin(angle), 0.2 * Math.sin(angle)] as const;
    });
    // NACA Report 184, fineness 6; 0.5 %: twelve slices.
    expectNear(bodyYawSlope(fuselage([0, 0, 0], stations)), -0.3506 * 0.5 * 0.25, 5e-3);
    const tall = fuselage([0, 0, 0], stations.map(([x, width, height]) => [x, width / 2, height * 2] as const));
    expectNear(bodyYawSlope(tall), 4 * bodyYawSlope(fuselage([0, 0, 0], stations)), 1e-9);
  });
});

describe("half a design with opposite images", () => {
  // Strips are laid by different rules once both sides are cut: 3 % of the largest, or of a coefficient of 0.01.
  it.each(Object.entries(designs))("answers as the whole does: %s", (_, { surfaces }) => {
    const [half, whole] = [flowOf(surfaces), flowOf(surfaces, 1, true)];
    const { area, span } = referenceGeometry(surfaces, [])!;
    for (const change of [sideslip, roll, yaw]) {
      const [a, b] = [half.respond(change, area / 2, at), whole.respond(change, area / 2, at)];
      const size = Math.max(Math.abs(b.side) * span, Math.abs(b.roll), Math.abs(b.yaw), 0.01 * area * span);
      expect(Math.abs(a.side - b.side) * span).toBeLessThan(0.03 * size);
      expect(Math.abs(a.roll - b.roll)).toBeLessThan(0.03 * size);
      expect(Math.abs(a.yaw - b.yaw)).toBeLessThan(0.03 * size);
    }
  }, 20_000);
});

describe("four times as many vortices", () => {
  // 4 %, or 0.0005: the most is 3.5 %, where a winglet stands on a swept tip.
  it.each(["conventional", "glider, four panels", "swept flying wing with winglets", "canard"])("change little: %s", (name) => {
    const { surfaces } = designs[name];
    const reference = referenceGeometry(surfaces, [])!;
    const [some, more] = [1, 2].map((density) => finished(lateralSteps(flowOf(surfaces, density), reference))({ lift: 0.5, ...at }));
    for (const [a, b] of [
      [some.sideslip.yaw, more.sideslip.yaw], [some.sideslip.roll, more.sideslip.roll],
      [some.rollRate.roll, more.rollRate.roll], [some.yawRate.yaw, more.yawRate.yaw],
    ]) expect(Math.abs(a - b)).toBeLessThan(0.04 * Math.abs(b) + 0.0005);
  }, 20_000);
});

const lengths = fc.double({ min: 0.05, max: 0.4, noNaN: true });
const slopes = fc.double({ min: -0.4, max: 0.4, noNaN: true });
/** One half wing and a fin off the plane: nothing symmetrical about it. */
const lopsided = fc.record({ span: fc.double({ min: 0.3, max: 1.5, noNaN: true }), root: lengths, tip: lengths, back: slopes, rise: slopes, twist: slopes, aside: slopes })
  .map(({ span, root, tip, back, rise, twist, aside }) => {
    const rows: Row[] = [[0, 0, 0, root, twist / 4], [back * span, span, rise * span, tip, 0]];
    const fin: Row[] = [[0.9, aside, 0, 0.15], [0.95, aside, 0.2, 0.1]];
    const mirror = (list: Row[]): Row[] => list.map(([x, y, z, c, t]) => [x, -y, z, c, t] as const);
    const both = (turn: (list: Row[]) => Row[]): Surface[] => [single(turn(rows)), single(turn(fin), { kind: "fin", path: "upright" })];
    return { own: both((list) => list), image: both(mirror) };
  });

describe("any design", () => {
  it("and its mirror image answer sideslip equal and opposite", () => {
    fc.assert(fc.property(lopsided, ({ own, image }) => {
      const a = flowOf(own, 0.6).respond(sideslip, 0.1, at);
      const b = flowOf(image, 0.6).respond(() => [0, 1, 0], 0.1, at);
      // Rounding alone.
      for (const key of ["side", "roll", "yaw"] as const) expect(Math.abs(a[key] + b[key])).toBeLessThan(1e-9 + 1e-6 * Math.abs(a[key]));
    }), { numRuns: 15 });
  }, 30_000);

  it("adds up: two motions together are the sum of each alone, and all is finite", () => {
    fc.assert(fc.property(fc.constantFrom(...Object.values(designs)), slopes, slopes, ({ surfaces }, p, r) => {
      const flow = flowOf(surfaces, 0.5);
      const together: Onset = (x, y, z) => [0, 1, 2].map((i) => p * roll(x, y, z)[i] + r * yaw(x, y, z)[i]) as [number, number, number];
      const [a, b, c] = [roll, yaw, together].map((change) => flow.respond(change, 0.1, at));
      for (const key of ["side", "roll", "yaw"] as const) {
        expect(Number.isFinite(a[key])).toBe(true);
        expect(c[key]).toBeCloseTo(p * a[key] + r * b[key], 9);
      }
    }), { numRuns: 10 });
  }, 30_000);

  it("answers each motion about any point at any lift as its own flow does", () => {
    const place = fc.double({ min: -0.4, max: 0.4, noNaN: true });
    fc.assert(fc.property(fc.constantFrom(...Object.values(designs)), fc.double({ min: -0.5, max: 1.5, noNaN: true }), place, place, ({ surfaces }, lift, x, z) => {
      const [flow, reference] = [flowOf(surfaces, 0.5), referenceGeometry(surfaces, [])!];
      const { area, span } = reference;
      const answers = finished(lateralSteps(flow, reference))({ lift, x, z });
      const rate = 2 / span;
      const motions: Readonly<Record<keyof typeof answers, Onset>> = {
        sideslip, rollRate: (_, y, height) => [0, -rate * (height - z), rate * y], yawRate: (along, y) => [-rate * y, rate * (along - x), 0],
      };
      for (const motion of ["sideslip", "rollRate", "yawRate"] as const) {
        const direct = flow.respond(motions[motion], lift * area, { x, z });
        expect(answers[motion].side).toBeCloseTo(direct.side / area, 9);
        expect(answers[motion].roll).toBeCloseTo(direct.roll / (area * span), 9);
        expect(answers[motion].yaw).toBeCloseTo(direct.yaw / (area * span), 9);
      }
    }), { numRuns: 10 });
  }, 30_000);
});
