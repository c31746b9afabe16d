import type { Surface } from "../../model/design/geometry";
import type { Lattice } from "./lattice";
import { factorSteps, solveFactored } from "./lu";

/** The part of the influence matrix by which the tailplanes act on themselves. */
export interface TailBlock {
  readonly rows: readonly number[];
  readonly values: Float64Array;
}

/** Undefined where no tailplane stands beside other surfaces. */
export function tailBlock(
  { elements: e, strips, pieces }: Lattice, surfaces: readonly Surface[], influence: Float64Array,
): TailBlock | undefined {
  const rows = Array.from({ length: e.count }, (_, i) => i)
    .filter((i) => surfaces[pieces[strips[Math.floor(i / e.rows)].piece].surface].kind === "tailplane");
  if (rows.length === 0 || rows.length === e.count) return undefined;
  const values = new Float64Array(rows.length ** 2);
  rows.forEach((i, k) => rows.forEach((j, l) => (values[k * rows.length + l] = influence[i * e.count + j])));
  return { rows, values };
}

/** 1 − lift of the tailplanes in the company of the other surfaces over their lift alone: downwash as their lift weighs it. */
export function downwashSlope({ elements: e }: Lattice, { rows, values }: TailBlock, circulation: Float64Array): number | undefined {
  const steps = factorSteps(values.slice(), rows.length);
  let step = steps.next();
  while (!step.done) step = steps.next();
  if (!step.value) return undefined;
  const alone = solveFactored(step.value, rows.map((i) => -e.nz[i]));
  const lift = (strength: (k: number) => number) => rows.reduce((sum, i, k) => sum + strength(k) * (e.by[i] - e.ay[i]), 0);
  const free = lift((k) => alone[k]);
  return free > 0 ? 1 - lift((k) => circulation[rows[k]]) / free : undefined;
}
