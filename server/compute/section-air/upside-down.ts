import type { SectionShape } from "../../model/design/geometry";
import { outlineOf } from "../polar/outline/outline";

type Points = readonly (readonly [number, number])[];

/** Sides of a symmetric section differ by no more than this, in chords. */
const even = 1e-4;

/** Is the section its own image in its chord? Yes for what is no section at all. */
export function isSymmetric(shape: SectionShape): boolean {
  if (shape.type === "flat") return true;
  if (shape.type === "naca") return /^00\d\d$/.test(shape.digits) || !outlineOf(shape);
  const { points } = shape;
  return points.every(([x, y]) => Math.abs(heightAt(points, x, -Math.sign(y)) + y) < even);
}

/** The section as it flies on its back. */
export function upsideDown(shape: SectionShape): SectionShape {
  const points = shape.type === "coordinates" ? shape.points : outlineOf(shape);
  return points ? { type: "coordinates", points: points.map(([x, y]) => [x, 0 - y] as const).reverse() } : shape;
}

/** Height of the upper (1) or lower (−1) side at a share of the chord. */
function heightAt(points: Points, x: number, side: number): number {
  const nose = points.reduce((best, [at], i) => (at < points[best][0] ? i : best), 0);
  const run = side > 0 ? points.slice(0, nose + 1).reverse() : points.slice(nose);
  const i = Math.max(1, run.findIndex((point) => point[0] >= x));
  const [[x0, y0], [x1, y1]] = [run[i - 1] ?? run[0], run[i] ?? run[0]];
  return x1 === x0 ? y0 : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
