import type { Factored } from "../../../../server/compute/lattice/lu";

/** Numbers between −1 and 1, the same for the same seed (G. Marsaglia, J. Statistical Software 8, 2003: xorshift). */
export function random(count: number, seed: number): Float64Array {
  let state = (seed * 2654435769 + 1013904223) | 0 || 1;
  return Float64Array.from({ length: count }, () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state / 2 ** 31;
  });
}

/** A matrix whose singular values fall evenly from 1 to 1/condition: two reflections about a diagonal. */
export function conditioned(size: number, condition: number, seed: number): Float64Array {
  const matrix = new Float64Array(size * size);
  const [u, v] = [unit(random(size, seed)), unit(random(size, seed + 1))];
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      for (let k = 0; k < size; k++) {
        const left = (i === k ? 1 : 0) - 2 * u[i] * u[k];
        const right = (k === j ? 1 : 0) - 2 * v[k] * v[j];
        matrix[i * size + j] += left * condition ** (-k / (size - 1)) * right;
      }
    }
  }
  return matrix;
}

const unit = (x: Float64Array): Float64Array => {
  const length = Math.hypot(...x);
  return x.map((value) => value / length);
};

export const times = (matrix: Float64Array, size: number, x: ArrayLike<number>): Float64Array =>
  Float64Array.from({ length: size }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += matrix[i * size + k] * x[k];
    return sum;
  });

const rowSum = (size: number, of: (i: number, j: number) => number): number => {
  let most = 0;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += of(i, j);
    most = Math.max(most, sum);
  }
  return most;
};

/** Largest entry of b − A x. */
export const residual = (matrix: Float64Array, size: number, x: Float64Array, right: Float64Array): number =>
  times(matrix, size, x).reduce((most, value, i) => Math.max(most, Math.abs(value - right[i])), 0);

/**
 * Bound of the residual by rounding: n u (3 ‖A‖ + 5 ‖ |L| |U| ‖) ‖x‖ in the greatest sums of rows (G. H. Golub and C. F. Van Loan, Matrix
 * Computations, 3rd ed., theorem 3.3.2, from memory), and the rounding of the residual itself.
 */
export function residualBound({ values, size }: Factored, matrix: Float64Array, x: Float64Array): number {
  const ofRow = (i: number): Float64Array => {
    const row = new Float64Array(size);
    for (let k = 0; k <= i; k++) {
      const l = k === i ? 1 : Math.abs(values[i * size + k]);
      for (let j = k; j < size; j++) row[j] += l * Math.abs(values[k * size + j]);
    }
    return row;
  };
  let factors = 0;
  for (let i = 0; i < size; i++) factors = Math.max(factors, ofRow(i).reduce((sum, value) => sum + value, 0));
  const own = rowSum(size, (i, j) => Math.abs(matrix[i * size + j]));
  const largest = x.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const rounding = 2 ** -53;
  return size * rounding * (3 * own + 5 * factors) * largest + size * rounding * own * largest + rounding;
}
