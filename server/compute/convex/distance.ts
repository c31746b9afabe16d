import type { Vec3 } from "../../model/design/geometry";
import { along, dot, minus, type Convex } from "./shapes";

const steps = 200;
/** Share of the distance. */
const tolerance = 1e-9;

/**
 * Distance between two convex things, m; 0 where they touch or overlap (E. G. Gilbert, D. W. Johnson, S. S. Keerthi, IEEE
 * Journal of Robotics and Automation 4(2), 1988): the point nearest to the origin of all differences of their points,
 * approached by a simplex of at most four of them.
 */
export function convexDistance(a: Convex, b: Convex): number {
  const differenceAlong = (d: Vec3): Vec3 => minus(a(d), b([-d[0], -d[1], -d[2]]));
  let simplex = [differenceAlong([1, 0, 0])];
  let nearest = simplex[0];
  const scale = Math.sqrt(dot(nearest, nearest));
  for (let step = 0; step < steps; step++) {
    const square = dot(nearest, nearest);
    if (square <= (1e-12 * scale) ** 2) return 0;
    const next = differenceAlong([-nearest[0], -nearest[1], -nearest[2]]);
    if (square - dot(nearest, next) <= tolerance * square) break;
    const found = nearestToOrigin([...simplex, next]);
    if (!(dot(found.point, found.point) < square)) break;
    ({ point: nearest, corners: simplex } = found);
    if (simplex.length === 4) return 0;
  }
  return Math.sqrt(dot(nearest, nearest));
}

interface Nearest {
  readonly point: Vec3;
  /** Those of the corners it lies between. */
  readonly corners: Vec3[];
}

/** The point of a simplex nearest to the origin: the best of all its corners, edges, faces and its inside. */
function nearestToOrigin(corners: readonly Vec3[]): Nearest {
  let best: Nearest = { point: corners[0], corners: [corners[0]] };
  for (let subset = 1; subset < 1 << corners.length; subset++) {
    const chosen = corners.filter((_, i) => subset & (1 << i));
    const point = nearestInside(chosen);
    if (point && dot(point, point) < dot(best.point, best.point)) best = { point, corners: chosen };
  }
  return best;
}

/** The foot of the origin on the flat through the corners, if it lies between them. */
function nearestInside([first, ...rest]: readonly Vec3[]): Vec3 | undefined {
  const edges = rest.map((corner) => minus(corner, first));
  const shares = solve(edges.map((e) => edges.map((f) => dot(e, f))), edges.map((e) => -dot(e, first)));
  if (!shares || shares.some((s) => s < 0) || shares.reduce((a, b) => a + b, 0) > 1) return undefined;
  return edges.reduce((point, edge, i) => along(point, shares[i], edge), first);
}

/** Up to three equations by elimination; undefined where they are not independent. The matrix is symmetric and not negative. */
function solve(matrix: number[][], right: number[]): number[] | undefined {
  const n = right.length;
  const sizes = matrix.map((row, i) => row[i]);
  for (let i = 0; i < n; i++) {
    if (!(matrix[i][i] > 1e-14 * sizes[i])) return undefined;
    for (let j = i + 1; j < n; j++) {
      const share = matrix[j][i] / matrix[i][i];
      for (let k = i; k < n; k++) matrix[j][k] -= share * matrix[i][k];
      right[j] -= share * right[i];
    }
  }
  const out = right.slice();
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) out[i] -= matrix[i][k] * out[k];
    out[i] /= matrix[i][i];
  }
  return out;
}
