import type { Body, Load, Surface } from "../../model/design/geometry";
import { convexDistance } from "../convex/distance";
import { bodyPieces, box, thinPanel } from "../convex/shapes";
import type { DragPart } from "./flow";

/** Of a cube on its face (S. F. Hoerner, Fluid-Dynamic Drag, ch. 3; from memory). */
const cube = 1.05;

/** A wing is this share of its chord deep to either side of its chords. */
const wingDepth = 0.1;

/** Drag of a load that hangs free: a box with a size, of which nothing lies inside a body or surface. Undefined for others. */
export function exposedDrag({ path, kind, at, size }: Load, bodies: readonly Body[], surfaces: readonly Surface[]): DragPart | undefined {
  if (!size || (kind !== "item" && kind !== "battery")) return undefined;
  const shape = box(at, size);
  if (bodies.some((body) => bodyPieces(body).some((piece) => convexDistance(shape, piece) === 0))) return undefined;
  const panels = surfaces.flatMap(({ halves }) => halves.flatMap((half) => half.panels));
  const inWing = panels.some((panel) => convexDistance(shape, thinPanel(panel)) <= wingDepth * Math.max(panel.inner.chord, panel.outer.chord));
  return inWing ? undefined : { path, area: cube * size[1] * size[2], how: "a box outside all bodies and surfaces, 1.05 on its frontal area (Hoerner)" };
}
