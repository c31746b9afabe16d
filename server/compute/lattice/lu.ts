import { sharedWorkspace } from "./dense/fast";
import { factorPlainly } from "./dense/plain";

/** A square matrix by rows, factored in place into lower and upper triangle with exchanged rows. */
export interface Factored {
  readonly size: number;
  readonly values: Float64Array;
  readonly order: Int32Array;
}

/**
 * LU with partial pivoting, in WebAssembly where there is such. Yields between stretches of work of a few milliseconds.
 * Undefined for a matrix that is singular to the last bits. The matrix is overwritten.
 */
export function* factorSteps(values: Float64Array, size: number): Generator<void, Factored | undefined> {
  const workspace = sharedWorkspace();
  const fast = workspace ? yield* workspace.factor(values, size) : false;
  const order = fast === false ? yield* factorPlainly(values, size) : fast;
  return order && { size, values, order };
}

/** Solution for one right-hand side. */
export function solveFactored({ size: n, values: a, order }: Factored, right: ArrayLike<number>): Float64Array {
  const x = new Float64Array(n);
  for (let i = 0; i < n; i++) x[i] = right[order[i]];
  for (let i = 1; i < n; i++) x[i] -= dot(a, i * n, x, 0, i);
  for (let i = n - 1; i >= 0; i--) x[i] = (x[i] - dot(a, i * n, x, i + 1, n)) / a[i * n + i];
  return x;
}

/** Of a row's entries from..to and x there; four sums side by side, as a sum waits for its last addition. */
function dot(a: Float64Array, row: number, x: Float64Array, from: number, to: number): number {
  let s0 = 0, s1 = 0, s2 = 0, s3 = 0;
  let k = from;
  for (; k + 3 < to; k += 4) {
    s0 += a[row + k] * x[k];
    s1 += a[row + k + 1] * x[k + 1];
    s2 += a[row + k + 2] * x[k + 2];
    s3 += a[row + k + 3] * x[k + 3];
  }
  for (; k < to; k++) s0 += a[row + k] * x[k];
  return s0 + s1 + (s2 + s3);
}
