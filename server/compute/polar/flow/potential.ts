import { factorSteps, solveFactored, type Factored } from "../../lattice/lu";
import type { Panels } from "../outline/panels";
import type { WakeFlow } from "./wake";
import { look, seen, sourceStream, vortexStream } from "./kernels";

/**
 * Potential flow about a section. Unknown is the speed along the outline at each node, `count` values, positive towards
 * the nose over the upper side and so negative where the flow runs aft below; flow at infinity is 1.
 */
export interface PotentialFlow {
  readonly panels: Panels;
  readonly factored: Factored;
  /** Speeds at angle 0 and at a right angle. */
  readonly level: Float64Array;
  readonly upright: Float64Array;
  /** Speed at each node by a source sheet of strength 1 on each panel, row by node. */
  readonly bySource: Float64Array;
  /** Wakes laid so far, by angle. */
  readonly wakes: Map<number, WakeFlow>;
}

/**
 * Solves for vortex sheets of linear strength on straight panels whose inner side is one streamline, speeds equal above
 * and below at the trailing edge. As the outline is closed, the condition of the last node is that of the first; in its
 * place the mean of upper and lower speed goes straight into the trailing edge. Undefined where the outline is no body.
 */
export function potentialFlow(panels: Panels): PotentialFlow | undefined {
  const n = panels.count;
  const size = n + 1;
  const matrix = new Float64Array(size * size);
  const source = new Float64Array(n * (n - 1));
  const p = seen();
  const pair = { a: 0, b: 0 };
  for (let i = 0; i < n - 1; i++) {
    for (let j = 0; j < n - 1; j++) {
      look(p, panels.x[i], panels.y[i], panels.x[j], panels.y[j], panels.length[j], panels.tx[j], panels.ty[j]);
      vortexStream(p, pair);
      matrix[i * size + j] += pair.a;
      matrix[i * size + j + 1] += pair.b;
      source[i * (n - 1) + j] = -sourceStream(p, false);
    }
    matrix[i * size + n] = -1;
  }
  smoothEdge(matrix, panels, (n - 1) * size);
  matrix[n * size] = 1;
  matrix[n * size + n - 1] = 1;
  const factored = finished(factorSteps(matrix, size));
  if (!factored) return undefined;
  const right = new Float64Array(size);
  for (let i = 0; i < n - 1; i++) right[i] = -panels.y[i];
  const level = solveFactored(factored, right).slice(0, n);
  for (let i = 0; i < n - 1; i++) right[i] = panels.x[i];
  const upright = solveFactored(factored, right).slice(0, n);
  return { panels, factored, level, upright, bySource: responses(factored, source, n - 1, n), wakes: new Map() };
}

/** (speed above − speed below) is straight over the last two panels; below, speeds along the outline count negative. */
function smoothEdge(matrix: Float64Array, { count: n, length }: Panels, row: number): void {
  const upper = length[1] / (length[0] + length[1]);
  const lower = length[n - 3] / (length[n - 2] + length[n - 3]);
  matrix[row] += upper;
  matrix[row + 1] -= 1;
  matrix[row + 2] += 1 - upper;
  matrix[row + n - 1] -= lower;
  matrix[row + n - 2] += 1;
  matrix[row + n - 3] -= 1 - lower;
}

/** Node speeds by each of `columns` sources, whose right-hand sides are given row by node; row by node again. */
export function responses(factored: Factored, source: Float64Array, columns: number, nodes: number): Float64Array {
  const out = new Float64Array(nodes * columns);
  const right = new Float64Array(factored.size);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < nodes - 1; i++) right[i] = source[i * columns + j];
    const solved = solveFactored(factored, right);
    for (let i = 0; i < nodes; i++) out[i * columns + j] = solved[i];
  }
  return out;
}

function finished<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

/** Speeds at an angle of attack, rad. */
export function speedsAt({ level, upright }: PotentialFlow, angle: number): Float64Array {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return level.map((value, i) => value * c + upright[i] * s);
}
