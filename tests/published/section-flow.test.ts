import { describe, expect, it } from "vitest";
import { pressureForces } from "../../server/compute/polar/flow/forces";
import { potentialFlow, speedsAt } from "../../server/compute/polar/flow/potential";
import { outlineOf } from "../../server/compute/polar/outline/outline";
import { panelled } from "../../server/compute/polar/outline/panels";
import { expectNear } from "./near";

type Points = readonly (readonly [number, number])[];

const radians = Math.PI / 180;

/**
 * Kármán–Trefftz section from the circle about `x`, `y` through 1, edge angle `edge`; L. M. Milne-Thomson, Theoretical
 * Aerodynamics. In chords, from the trailing edge over the upper side; and its chord.
 */
function mapped(x: number, y: number, edge: number): { points: Points; chord: number } {
  const k = 2 - edge / Math.PI;
  const radius = Math.hypot(1 - x, y);
  const start = Math.atan2(-y, 1 - x);
  const count = 400;
  const power = (re: number, im: number): readonly [number, number] => {
    const size = Math.hypot(re, im) ** k;
    const turn = k * Math.atan2(im, re);
    return [size * Math.cos(turn), size * Math.sin(turn)];
  };
  const raw = Array.from({ length: count + 1 }, (_, i): readonly [number, number] => {
    const angle = start + (2 * Math.PI * i) / count;
    const [zx, zy] = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    const [ax, ay] = power(zx + 1, zy);
    const [bx, by] = i % count === 0 ? [0, 0] : power(zx - 1, zy);
    const [nx, ny, dx, dy] = [ax + bx, ay + by, ax - bx, ay - by];
    const size = dx * dx + dy * dy;
    return [(k * (nx * dx + ny * dy)) / size, (k * (ny * dx - nx * dy)) / size];
  });
  const xs = raw.map(([px]) => px);
  const [low, chord] = [Math.min(...xs), Math.max(...xs) - Math.min(...xs)];
  return { points: raw.map(([px, py]) => [(px - low) / chord, py / chord]), chord };
}

const flowOf = (points: Points) => potentialFlow(panelled(points, 80))!;
const liftAt = (flow: ReturnType<typeof flowOf>, degrees: number) => pressureForces(flow.panels, speedsAt(flow, degrees * radians), degrees * radians);

describe("potential flow about mapped sections", () => {
  // Lift 8π (radius ⁄ chord) sin(α + β), exact. 160 panels: 1 % where the edge is a cusp, 0.3 % with an angle.
  it.each<[string, number, number, number, number, number]>([
    ["symmetric, cusped", -0.1, 0, 0, 0.597399, 0.01],
    ["cambered, cusped", -0.1, 0.1, 0, 1.218072, 0.01],
    ["cambered, 10 deg at the edge", -0.08, 0.08, 10, 1.11621, 0.003],
  ])("%s", (_, x, y, edge, lift, tolerance) => {
    const { points, chord } = mapped(x, y, edge * radians);
    expectNear(8 * Math.PI * (Math.hypot(1 - x, y) / chord) * Math.sin(5 * radians + Math.atan2(y, 1 - x)), lift, 1e-5);
    expectNear(liftAt(flowOf(points), 5).lift, lift, tolerance);
  });

  // Pressures of the same map, evaluated from its formula at 5 deg.
  it("pressures of the symmetric one", () => {
    const flow = flowOf(mapped(-0.1, 0, 0).points);
    const speeds = speedsAt(flow, 5 * radians);
    for (const [x, y, pressure] of [[0.2218, 0.0586, -0.8678], [0.45902, 0.04918, -0.4294], [0.71622, 0.02341, -0.1115],
      [0.2218, -0.0586, -0.014], [0.05813, -0.03969, 0.3503], [0.05813, 0.03969, -1.5203]]) {
      const { panels } = flow;
      const i = Array.from(panels.x).findIndex((_, k) => k > 0 && Math.sign(panels.y[k]) === Math.sign(y) && (panels.x[k - 1] - x) * (panels.x[k] - x) <= 0);
      const share = (x - panels.x[i - 1]) / (panels.x[i] - panels.x[i - 1]);
      const speed = speeds[i - 1] + share * (speeds[i] - speeds[i - 1]);
      // Straight between nodes where the pressure is steepest.
      expect(Math.abs(1 - speed ** 2 - pressure)).toBeLessThan(0.01);
    }
  });
});

describe("potential flow about NACA sections", () => {
  const flow = (digits: string) => flowOf(outlineOf({ type: "naca", digits })!);

  // Another panel method with 200 to 800 panels, stable to 1e-4: lift of the closed section.
  it("NACA 0012 at 5 and 8 deg", () => {
    expectNear(liftAt(flow("0012"), 5).lift, 0.60301, 5e-3);
    expectNear(liftAt(flow("0012"), 8).lift, 0.96291, 5e-3);
    expect(Math.abs(liftAt(flow("0012"), 0).lift)).toBeLessThan(1e-9);
  });
  it.each([["2412", 0.2596], ["4412", 0.5183], ["23012", 0.1416]])("NACA %s at 0 deg", (digits, lift) => {
    expectNear(liftAt(flow(digits), 0).lift, lift, 0.01);
  });

  // NACA Report 824, appendix I (from memory): (speed ⁄ stream)² of 0012 at no angle; made by conformal mapping by hand.
  it("speeds of NACA 0012", () => {
    const found = flow("0012");
    const speeds = speedsAt(found, 0);
    for (const [x, square] of [[0.1, 1.411], [0.2, 1.399], [0.3, 1.35], [0.4, 1.288], [0.6, 1.166], [0.8, 1.044]]) {
      const i = Array.from(found.panels.x).findIndex((value) => value <= x);
      expect(Math.abs(speeds[i] ** 2 - square)).toBeLessThan(0.02);
    }
  });

  // Thin sections come to thin-section theory as they get thinner: lift of 2π(α − α₀), here with 2 % thickness 1.5 % above.
  it("a thin section", () => {
    const found = flow("2402");
    const slope = (liftAt(found, 2).lift - liftAt(found, 0).lift) / (2 * radians);
    expectNear(slope, 2 * Math.PI, 0.02);
    expectNear(-liftAt(found, 0).lift / slope, -2.0772 * radians, 0.02);
    expectNear(liftAt(found, 0).moment, -0.05312, 0.02);
  });
});
