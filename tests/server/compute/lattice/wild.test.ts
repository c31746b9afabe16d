import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import { solveLattice } from "../../../../server/compute/lattice/solve-lattice";
import type { Surface, SurfaceKind } from "../../../../server/model/design/geometry";
import { fuselage, mirrored, single, tapered, type Row } from "../airframes";

/** Any half a designer could write and mean: tiny and pointed tips, sweep to 85 degrees, dihedral all round, many panels. */
const half = fc.record({
  root: fc.record({ x: fc.double({ min: -2, max: 2, noNaN: true }), y: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.4, noNaN: true })), z: fc.double({ min: -0.5, max: 0.5, noNaN: true }), chord: fc.double({ min: 0.001, max: 1, noNaN: true }) }),
  panels: fc.array(fc.record({
    span: fc.oneof(fc.double({ min: 0.001, max: 0.02, noNaN: true }), fc.double({ min: 0.02, max: 2, noNaN: true })),
    chord: fc.oneof(fc.constant(0), fc.constant(1e-6), fc.double({ min: 0.001, max: 1, noNaN: true })),
    sweep: fc.double({ min: -1.48, max: 1.48, noNaN: true }),
    dihedral: fc.oneof(fc.constant(0), fc.constant(Math.PI / 2), fc.double({ min: -1.6, max: 1.6, noNaN: true })),
    twist: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
  }), { minLength: 1, maxLength: 5 }),
});

const surface = fc.tuple(half, fc.boolean(), fc.constantFrom<SurfaceKind>("wing", "tailplane", "canard", "fin")).map(([{ root, panels }, both, kind]): Surface => {
  const rows: Row[] = [[root.x, root.y, root.z, root.chord]];
  for (const { span, chord, sweep, dihedral, twist } of panels) {
    const [x, y, z] = rows[rows.length - 1];
    rows.push([x + span * Math.tan(sweep), y + span * Math.cos(dihedral), z + span * Math.sin(dihedral), chord, twist]);
  }
  return (both ? mirrored : single)(rows, { kind, path: kind, shape: { type: "naca", digits: "2412" } });
});

const finite = (value: unknown): boolean =>
  typeof value === "number" ? Number.isFinite(value)
    : value instanceof Float64Array ? value.every(Number.isFinite)
      : typeof value === "object" && value !== null ? Object.values(value).every(finite) : true;

describe("wild geometry", () => {
  it("gives numbers or nothing, never what is no number", () => {
    fc.assert(fc.property(fc.array(surface, { minLength: 1, maxLength: 4 }), (surfaces) => {
      const found = neutralPoint({ surfaces, bodies: [fuselage([0, 0, 0], [[0, 0.1, 0.1], [1, 0.05, 0.05]])] });
      if (!found) return;
      expect(finite(found)).toBe(true);
      expect(finite(found.lattice.upwash([0.3, 0.1, 0.2]))).toBe(true);
      expect(found.liftSlope).toBeGreaterThan(0);
    }), { numRuns: 30 });
  }, 120_000);

  it("a mirrored design is solved by one side, its strips in pairs", () => {
    fc.assert(fc.property(half, ({ root, panels }) => {
      const rows: Row[] = [[root.x, root.y, root.z, root.chord], [root.x + 0.1, root.y + panels[0].span, root.z, 0.1]];
      const found = solveLattice([mirrored(rows)])!;
      expect(found.symmetric).toBe(true);
      const count = (side: string) => found.strips.filter((strip) => strip.side === side).length;
      expect(count("left")).toBe(count("right"));
    }), { numRuns: 30 });
  });

  it("two surfaces in one place have no solution, and no area has none", () => {
    const wing = tapered(2, 0.3, 0.2, 0);
    expect(solveLattice([wing, { ...wing, path: "again" }])).toBeUndefined();
    expect(solveLattice([tapered(2, 0, 0, 0)])).toBeUndefined();
    expect(solveLattice([])).toBeUndefined();
    expect(solveLattice([single([[0, 0, 0, 0.2], [0, 0, 0.3, 0.2]], { kind: "fin" })])).toBeUndefined();
  });
});
