import { describe, expect, it } from "vitest";
import { airBasis } from "../../../../server/compute/aircraft/air-basis";
import { trimAt } from "../../../../server/compute/aircraft/trim";
import { middleAlong, turning, type Turn } from "../../../../server/compute/aircraft/turned";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import type { Surface } from "../../../../server/model/design/geometry";
import { degree, trainer, withControls } from "./planes";

const bare = (surfaces: readonly Surface[]) => surfaces.map((surface) => withControls(surface));

/** The trainer with its stations' twist changed, solved anew, beside the one whose basis is turned. */
function both(twist: (surface: Surface, end: "inner" | "outer") => number, turn: Turn, share: number) {
  const { surfaces, bodies } = trainer();
  const changed = surfaces.map((surface) => ({
    ...surface,
    halves: surface.halves.map((half) => ({
      ...half,
      panels: half.panels.map((panel) => ({
        ...panel,
        inner: { ...panel.inner, twist: panel.inner.twist + twist(surface, "inner") }, outer: { ...panel.outer, twist: panel.outer.twist + twist(surface, "outer") },
      })),
    })),
  }));
  const pitch = neutralPoint({ surfaces: bare(surfaces), bodies })!;
  const anew = airBasis(neutralPoint({ surfaces: bare(changed), bodies })!, { surfaces: changed, bodies });
  const turned = turning(pitch, airBasis(pitch, { surfaces, bodies }), { surfaces, bodies }, turn)(share);
  const query = { liftCoefficient: 0.6, cgX: 0.27, cgZ: 0.02 };
  return { anew: trimAt(anew, query)!, turned: trimAt(turned, query)! };
}

describe("a basis with chords turned is that of the shape solved anew", () => {
  // The lattice takes twist as slopes alone, so that only rounding is between them.
  const close = ({ anew, turned }: ReturnType<typeof both>) => {
    expect(turned.pitch).toBeCloseTo(anew.pitch, 9);
    expect(turned.angle).toBeCloseTo(anew.angle, 9);
    expect(turned.inducedDrag).toBeCloseTo(anew.inducedDrag, 9);
    turned.liftCoefficients.forEach((lift, i) => expect(lift).toBeCloseTo(anew.liftCoefficients[i], 8));
  };

  it("by an incidence of the tailplane", () => {
    const incidence = -2.5 * degree;
    const one = both(({ kind }) => (kind === "tailplane" ? incidence : 0), ({ kind }) => (kind === "tailplane" ? 1 : 0), incidence);
    close(one);
    expect(one.turned.pitch).toBeLessThan(0.9);
  });

  it("by washout along the wing", () => {
    const washout = 3 * degree;
    close(both(({ kind }, end) => (kind === "wing" && end === "outer" ? -washout : 0),
      (strip) => (strip.kind === "wing" ? -Math.max(0, middleAlong(strip)) : 0), washout));
  });
});
