import fc from "fast-check";
import { setImmediate } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { airBasis } from "../../../../server/compute/aircraft/air-basis";
import { stateOf } from "../../../../server/compute/aircraft/air-state";
import { forwardLimit } from "../../../../server/compute/aircraft/forward-limit";
import { levelState } from "../../../../server/compute/aircraft/level-state";
import { stallSpeed } from "../../../../server/compute/aircraft/stall-speed";
import { trimAt } from "../../../../server/compute/aircraft/trim";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import type { Control, Station, Surface, SurfaceKind } from "../../../../server/model/design/geometry";
import { fuselage, mirrored, single, type Row } from "../airframes";
import { air, control, sectionsLike, withControls } from "./planes";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const share = real(0, 1);

const controls = fc.array(fc.record({
  kind: fc.constantFrom("elevator", "elevon", "ruddervator", "flap", "flaperon", "aileron"),
  along: fc.tuple(share, share), chord: fc.tuple(real(0.01, 1), real(0.01, 1)), allMoving: fc.boolean(), joined: fc.boolean(),
  reflex: fc.option(real(-0.8, 0.8), { nil: undefined }),
  throws: fc.dictionary(fc.constantFrom("up", "down", "pitch_up", "pitch_down", "droop"), real(0, 1.57)),
}), { maxLength: 3 }).map((all): Control[] => all.map(({ kind, ...rest }, i) => control(kind, { ...rest, path: `c${i}` })));

const surface = fc.record({
  x: real(-1, 1), y: fc.oneof(fc.constant(0), real(0, 0.3)), z: real(-0.3, 0.3), root: real(0.01, 0.5), tip: fc.oneof(fc.constant(0), real(0, 0.5)),
  span: real(0.05, 1.5), sweep: real(-1, 1), dihedral: fc.oneof(fc.constant(0), real(-1.5, 1.5)), twist: real(-0.15, 0.15), both: fc.boolean(),
  kind: fc.constantFrom<SurfaceKind>("wing", "wing", "tailplane", "canard", "fin"), controls,
}).map(({ x, y, z, root, tip, span, sweep, dihedral, twist, both, kind, controls: own }): Surface => {
  const rows: Row[] = [[x, y, z, root], [x + span * Math.tan(sweep), y + span * Math.cos(dihedral), z + span * Math.sin(dihedral), tip, twist]];
  return withControls((both ? mirrored : single)(rows, { kind, shape: { type: "naca", digits: "2412" } }), ...own);
});

const designs = fc.array(surface, { minLength: 1, maxLength: 4 }).map((all) => all.map((one, i) => ({ ...one, path: `s${i}` })));
const hull = fuselage([0, 0, 0], [[0, 0.1, 0.1], [1, 0.05, 0.05]]);

const reflected = (station: Station): Station =>
  ({ ...station, leadingEdge: [station.leadingEdge[0], -station.leadingEdge[1], station.leadingEdge[2]] });

const finite = (value: unknown): boolean =>
  typeof value === "number" ? Number.isFinite(value)
    : value instanceof Float64Array ? value.every(Number.isFinite)
      : value instanceof Map ? [...value.values()].every(finite)
        : typeof value === "object" && value !== null ? Object.values(value).every(finite) : true;

describe("wild designs with wild controls", () => {
  it("give numbers or nothing; what is trimmed has the lift and no moment", async () => {
    await fc.assert(fc.asyncProperty(designs, real(-1, 2), real(-0.5, 1), real(0, 1), async (surfaces, lift, cgX, flaps) => {
      await setImmediate();
      const pitch = neutralPoint({ surfaces, bodies: [hull] });
      if (!pitch) return;
      const basis = airBasis(pitch, { surfaces, bodies: [hull], flaps });
      expect(finite(basis.modes)).toBe(true);
      const held = trimAt(basis, { liftCoefficient: lift, cgX, cgZ: 0 });
      if (held) {
        expect(finite(held)).toBe(true);
        // The stick may be far out of its way, and the loads there large: 1e-6 of them.
        const size = basis.reference.area * (Math.abs(lift) + Math.abs(held.pitch) + 1);
        expect(Math.abs(held.lift - lift * basis.reference.area)).toBeLessThan(1e-6 * size);
        const level = Math.max(...[2, 3].map((m) => Math.abs(basis.modes[m].moment))) * (1 + Math.abs(held.pitch));
        // Controls that hardly act want a million throws and more: what is left is then the difference of huge loads.
        if (Math.abs(held.pitch) < 1e6) expect(Math.abs(held.moment(cgX, 0))).toBeLessThan(1e-6 * (level + size * (1 + Math.abs(held.angle) ** 2)));
      }
      const query = { mass: 1.5, air, cgX, cgZ: 0 };
      for (const found of [stallSpeed(basis, sectionsLike(), query), levelState(basis, sectionsLike(), { ...query, speed: 15 }), forwardLimit(basis, sectionsLike(), query)]) {
        expect(finite(found)).toBe(true);
      }
    }), { numRuns: 40, endOnFailure: true });
  }, 180_000);

  it("mirrored in y = 0 they lift, pitch and drag alike", async () => {
    const image = (one: Surface): Surface => ({
      ...one,
      halves: one.halves.map((half) => ({
        side: half.side === "right" ? "left" : half.side === "left" ? "right" : "only",
        panels: half.panels.map((p) => ({ ...p, inner: reflected(p.inner), outer: reflected(p.outer) })),
      })),
    });
    // A wing, and a tail to one side alone, clear of each other and not upright: what touches is the lattice's own matter.
    const skew = fc.tuple(share, share, real(0.05, 0.3), controls, controls).map(([sweep, rise, y, wing, tail]): Surface[] => [
      withControls(mirrored([[0, 0, 0, 0.25], [0.3 * sweep, 0.8, 0.2 * rise, 0.15]], { path: "wing" }), ...wing),
      withControls(single([[0.9, y, 0.3, 0.15], [0.95, y + 0.3, 0.35, 0.1]], { kind: "tailplane" }), ...tail),
    ]);
    await fc.assert(fc.asyncProperty(skew, async (surfaces) => {
      await setImmediate();
      const [one, two] = [surfaces, surfaces.map(image)].map((all) => {
        const basis = airBasis(neutralPoint({ surfaces: all, bodies: [] })!, { surfaces: all, bodies: [], flaps: 0.2 });
        return stateOf(basis, { angle: 0.1, pitch: 0.5 });
      });
      // Rounding of some hundred equations.
      expect(Math.abs(one.lift - two.lift)).toBeLessThan(1e-9);
      expect(Math.abs(one.moment(0) - two.moment(0))).toBeLessThan(1e-9);
      expect(Math.abs(one.inducedDrag - two.inducedDrag)).toBeLessThan(1e-9);
    }), { numRuns: 15, endOnFailure: true });
  }, 120_000);
});
