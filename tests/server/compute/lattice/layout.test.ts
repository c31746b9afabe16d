import { describe, expect, it } from "vitest";
import { layLattice } from "../../../../server/compute/lattice/lattice";
import { solveLattice, type LatticeSolution } from "../../../../server/compute/lattice/solve-lattice";
import type { Surface } from "../../../../server/model/design/geometry";
import { fuselage, mirrored, moved, single, tapered, type Row } from "../airframes";
import { conventionalWing, designs, tailAt } from "../designs";

const rows: readonly Row[] = [[0, 0, 0, 0.25], [0.02, 0.4, 0, 0.22], [0.08, 0.8, 0.03, 0.12]];
const image = (list: readonly Row[]): Row[] => list.map(([x, y, z, c, t]) => [x, -y, z, c, t ?? 0]);

/** Lift and neutral point against each other, as shares. */
function apart(a: LatticeSolution, b: LatticeSolution, chord = 0.2): number {
  return Math.max(Math.abs(a.liftSlope / b.liftSlope - 1), Math.abs(a.neutralPoint - b.neutralPoint) / chord);
}

describe("laying the lattice", () => {
  it("solves one side of a symmetric design, and gives the loads of both", () => {
    const found = solveLattice(designs.conventional.surfaces)!;
    expect(found.symmetric).toBe(true);
    expect(found.leftOut).toEqual(["upright"]);
    const side = (which: string) => found.strips.filter((strip) => strip.side === which)
      .map(({ path, x, y, z, circulation }) => [path, x, which === "left" ? -y : y, z, circulation.slope]);
    expect(side("left")).toEqual(side("right"));
    const lift = found.strips.reduce((sum, { circulation, width }) => sum + 2 * circulation.slope * width, 0);
    expect(lift).toBeCloseTo(found.liftSlope, 9);
  });

  it("solving both sides comes to the same", () => {
    const { surfaces } = designs.conventional;
    const whole = solveLattice(surfaces, { whole: true })!;
    expect(whole.symmetric).toBe(false);
    // 0.05 %: strips are spaced a little otherwise over the middle.
    expect(apart(whole, solveLattice(surfaces)!)).toBeLessThan(5e-4);
  });

  it("mirrored twins in two assemblies are one symmetric design", () => {
    const twins = [single(rows, { path: "right.half" }), single(image(rows), { path: "left.half" })];
    const found = solveLattice(twins)!;
    expect(found.symmetric).toBe(true);
    expect(apart(found, solveLattice([mirrored(rows)])!)).toBeLessThan(1e-12);
    expect(new Set(found.strips.map(({ path, y }) => `${path} ${Math.sign(y)}`))).toEqual(new Set(["right.half 1", "left.half -1"]));
  });

  it("a design that is not symmetric is solved whole: less lift on one side", () => {
    const found = solveLattice([conventionalWing, single([[0.6, 0.1, 0, 0.1], [0.6, 0.4, 0, 0.1]], { kind: "tailplane" })])!;
    expect(found.symmetric).toBe(false);
    const strips = found.strips.filter(({ kind }) => kind === "wing");
    const half = (sign: number) => strips.filter(({ y }) => y * sign > 0).reduce((sum, { circulation, width }) => sum + circulation.slope * width, 0);
    expect(half(1)).toBeGreaterThan(half(-1)); // in the upwash ahead of the tail
  });

  it("a wing that is not mirrored but reaches both sides, and its mirrored twin", () => {
    expect(apart(solveLattice([single([[0, -1, 0, 0.25], [0, 1, 0, 0.25]])])!, solveLattice([mirrored([[0, 0, 0, 0.25], [0, 1, 0, 0.25]])])!)).toBeLessThan(1e-12);
  });

  it("panel joints on a straight wing change nothing", () => {
    const at = (y: number): Row => [0.3 * y, y, 0, 0.25 - 0.1 * y];
    const plain = solveLattice([mirrored([at(0), at(1)])])!;
    for (const joints of [[0.05], [0.5], [0.97], [0.9, 0.93, 0.96], [0.02, 0.5, 0.51, 0.52]]) {
      // 0.1 %: the same wing, its strips shifted a little to meet the joints.
      expect(apart(solveLattice([mirrored([0, ...joints, 1].map(at))])!, plain)).toBeLessThan(1e-3);
    }
  });

  it("a wing in pieces is the whole wing, and a slit of two millimetres leaks nothing", () => {
    const whole = solveLattice([mirrored(rows)])!;
    const pieces = (slit: number) => solveLattice([mirrored(rows.slice(0, 2), { path: "centre" }),
      mirrored([[0.02, 0.4 + slit, 0, 0.22], rows[2]], { path: "outer" })])!;
    expect(apart(pieces(0), whole)).toBeLessThan(1e-3); // an edge stands at the joint
    expect(apart(pieces(0.002), whole)).toBeLessThan(2e-3);
    expect(solveLattice([mirrored([[0, 0.002, 0, 0.25], ...rows.slice(1)])])!.liftSlope / whole.liftSlope).toBeCloseTo(1, 2);
    // A real gap does cost lift.
    expect(pieces(0.03).liftSlope).toBeLessThan(0.95 * whole.liftSlope);
  });

  it("closes the gap over a fuselage with the root chord", () => {
    const gapped = [mirrored([[0, 0.05, 0, 0.2], [0, 0.8, 0, 0.2]])];
    const bodies = [fuselage([-0.3, 0, 0], [[0, 0.1, 0.1], [0.9, 0.1, 0.1]])];
    const closed = mirrored([[0, 0, 0, 0.2], [0, 0.8, 0, 0.2]]);
    expect(apart(solveLattice(gapped, { bodies })!, solveLattice([closed])!)).toBeLessThan(1e-3); // strips shifted by the joint
    expect(solveLattice(gapped)!.liftSlope).toBeLessThan(0.9 * solveLattice([closed])!.liftSlope);
  });

  it("has columns of one y for all level surfaces, whatever their height", () => {
    const lattice = layLattice([conventionalWing, tailAt(0.2)])!;
    const ys = (surface: number) => lattice.strips.filter(({ piece }) => lattice.pieces[piece].surface === surface).map(({ middle }) => middle.y);
    expect(ys(1).every((y) => ys(0).some((other) => Math.abs(other - y) < 1e-12))).toBe(true);
    expect(ys(1).length).toBeGreaterThan(5);
  });

  it("winglets carry on the wing's circulation round the corner", () => {
    const flat = solveLattice([mirrored(rows)])!;
    const tipped = solveLattice([mirrored([...rows, [0.1, 0.81, 0.15, 0.08]])])!;
    expect(tipped.liftSlope).toBeGreaterThan(1.02 * flat.liftSlope);
    const onWing = tipped.strips.filter(({ y, z }) => y > 0.75 && z < 0.03);
    expect(onWing[onWing.length - 1].circulation.slope).toBeGreaterThan(0.1 * Math.max(...tipped.strips.map((s) => s.circulation.slope)));
  });

  it("a V-tail's lift slope falls about as cos² (NACA Report 823)", () => {
    const vee = (angle: number) => solveLattice([mirrored([[0, 0, 0, 0.12], [0.02, 0.35 * Math.cos(angle), 0.35 * Math.sin(angle), 0.09]])])!.liftSlope;
    // The rule is for small angles of the panels to each other's flow: 3 % at 35 degrees.
    expect(vee((35 * Math.PI) / 180) / vee(0) / Math.cos((35 * Math.PI) / 180) ** 2).toBeCloseTo(1, 1);
  });

  it("moments are about any point asked for", () => {
    const wing = [tapered(2, 0.3, 0.2, 0.1)];
    const [a, b] = [solveLattice(wing)!, solveLattice(wing, { about: 0.4 })!];
    expect(b.momentSlope).toBeCloseTo(a.momentSlope + 0.4 * a.liftSlope, 12);
    expect(b.neutralPoint).toBeCloseTo(a.neutralPoint, 12);
  });

  it("stays within its size, however many surfaces there are", () => {
    const stack: Surface[] = Array.from({ length: 12 }, (_, i) => moved([mirrored(rows, { path: `w${i}` })], [0.1 * i, 0, 0.3 * i])[0]);
    const found = solveLattice(stack)!;
    expect(found.unknowns).toBeLessThanOrEqual(900);
    expect(found.liftSlope).toBeGreaterThan(0);
  });
});
