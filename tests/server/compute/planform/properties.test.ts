import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { referenceGeometry } from "../../../../server/compute/planform/reference-geometry";
import { surfaceGeometry } from "../../../../server/compute/planform/surface-geometry";
import { canardVolume, finVolume, tailVolume } from "../../../../server/compute/planform/volumes";
import type { Shape } from "../../../../server/compute/stability/neutral-point";
import { moved, movedBodies } from "../airframes";
import { designs } from "../designs";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const design = fc.constantFrom(...Object.values(designs));
const changed = ({ surfaces, bodies }: Shape, by: readonly [number, number, number], factor = 1): Shape =>
  ({ surfaces: moved(surfaces, by, factor), bodies: movedBodies(bodies, by, factor) });
const volumes = ({ surfaces, bodies }: Shape) => {
  const reference = referenceGeometry(surfaces, bodies)!;
  return [tailVolume(surfaces, bodies, reference), canardVolume(surfaces, bodies, reference), finVolume(surfaces, reference)];
};
/** Sums of a few products of numbers near one: only the last bits may differ. */
const expectSame = (a: number | undefined, b: number | undefined) =>
  a === undefined || b === undefined ? expect(a).toBe(b) : expect(Math.abs(a - b)).toBeLessThan(1e-9 * (1 + Math.abs(b)));

describe("planform", () => {
  it("moves with the design: areas, chords and volumes stay", () => {
    fc.assert(fc.property(design, fc.tuple(number(-5, 5), number(-5, 5), number(-5, 5)), (shape, by) => {
      const there = changed(shape, by);
      const [a, b] = [referenceGeometry(shape.surfaces, shape.bodies)!, referenceGeometry(there.surfaces, there.bodies)!];
      expectSame(b.area, a.area);
      expectSame(b.span, a.span);
      expectSame(b.meanChord, a.meanChord);
      expectSame(b.meanChordX, a.meanChordX + by[0]);
      volumes(there).forEach((volume, i) => expectSame(volume, volumes(shape)[i]));
    }));
  });

  it("grows with the design: areas by the square, volumes not at all", () => {
    fc.assert(fc.property(design, number(0.05, 20), (shape, factor) => {
      const grown = changed(shape, [0, 0, 0], factor);
      const [a, b] = [referenceGeometry(shape.surfaces, shape.bodies)!, referenceGeometry(grown.surfaces, grown.bodies)!];
      expectSame(b.area / factor ** 2, a.area);
      expectSame(b.meanChord / factor, a.meanChord);
      expectSame(b.aspectRatio, a.aspectRatio);
      volumes(grown).forEach((volume, i) => expectSame(volume, volumes(shape)[i]));
    }));
  });

  it("a surface has no less area as built than on the plan, and its two effective areas make up the whole", () => {
    fc.assert(fc.property(design, ({ surfaces, bodies }) => {
      for (const surface of surfaces) {
        const { area, projectedArea, effectiveAreas } = surfaceGeometry(surface, surfaces, bodies)!;
        expect(projectedArea).toBeLessThanOrEqual(area * (1 + 1e-12));
        expectSame(effectiveAreas.pitch + effectiveAreas.yaw, area);
      }
    }));
  });
});
