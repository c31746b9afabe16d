import type { SectionShape } from "../../model/design/geometry";
import { outlineOf } from "../polar/outline/outline";
import { meanLine } from "../section/mean-line";

/** The mean line of a symmetric section lies no farther from its chord than this, in chords. */
const even = 1e-4;

const places = Array.from({ length: 49 }, (_, i) => (1 - Math.cos((Math.PI * (i + 1)) / 50)) / 2);

/** Is the section its own image in its chord? Yes for what is no section at all. */
export function isSymmetric(shape: SectionShape): boolean {
  const line = meanLine(shape);
  return !line || places.every((x) => Math.abs(line.height(x)) < even);
}

/** The section as it flies on its back. */
export function upsideDown(shape: SectionShape): SectionShape {
  const points = shape.type === "coordinates" ? shape.points : outlineOf(shape);
  return points ? { type: "coordinates", points: points.map(([x, y]) => [x, 0 - y] as const).reverse() } : shape;
}
