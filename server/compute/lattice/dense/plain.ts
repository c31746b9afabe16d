/** Multiplications between two yields: a few milliseconds. */
const stretch = 4e6;

/**
 * LU with partial pivoting in place, four columns at a time so that each row is read and written once for four. Gives the
 * order of the rows; undefined for a matrix that is singular to the last bits. Yields between stretches of work.
 */
export function* factorPlainly(values: Float64Array, size: number): Generator<void, Int32Array | undefined> {
  const order = Int32Array.from({ length: size }, (_, i) => i);
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (!(largest > 0 && largest < Infinity)) return undefined;
  let work = 0;
  for (let from = 0; from < size; from += 4) {
    const to = Math.min(size, from + 4);
    if (!factorPanel(values, size, from, to, order, largest * size * 1e-16)) return undefined;
    finishRows(values, size, from, to);
    updateRest(values, size, from, to);
    work += (size - to) ** 2 * 4;
    if (work > stretch) {
      work = 0;
      yield;
    }
  }
  return order;
}

function factorPanel(a: Float64Array, n: number, from: number, to: number, order: Int32Array, least: number): boolean {
  for (let c = from; c < to; c++) {
    let pivot = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(a[i * n + c]) > Math.abs(a[pivot * n + c])) pivot = i;
    if (!(Math.abs(a[pivot * n + c]) > least)) return false;
    if (pivot !== c) exchange(a, n, c, pivot, order);
    const scale = 1 / a[c * n + c];
    for (let i = c + 1; i < n; i++) {
      const l = (a[i * n + c] *= scale);
      for (let k = c + 1; k < to; k++) a[i * n + k] -= l * a[c * n + k];
    }
  }
  return true;
}

function exchange(a: Float64Array, n: number, i: number, j: number, order: Int32Array): void {
  for (let k = 0; k < n; k++) {
    const held = a[i * n + k];
    a[i * n + k] = a[j * n + k];
    a[j * n + k] = held;
  }
  const held = order[i];
  order[i] = order[j];
  order[j] = held;
}

function finishRows(a: Float64Array, n: number, from: number, to: number): void {
  for (let c = from + 1; c < to; c++) {
    for (let r = from; r < c; r++) {
      const l = a[c * n + r];
      for (let k = to; k < n; k++) a[c * n + k] -= l * a[r * n + k];
    }
  }
}

/** Two rows at a time: the four pivot rows are then read half as often. */
function updateRest(a: Float64Array, n: number, from: number, to: number): void {
  const u0 = from * n, u1 = u0 + n, u2 = u1 + n, u3 = u2 + n;
  for (let i = to; i < n; i += 2) {
    const row = i * n;
    const next = i + 1 < n ? row + n : row;
    const l0 = a[row + from], l1 = a[row + from + 1], l2 = a[row + from + 2], l3 = a[row + from + 3];
    const m0 = a[next + from], m1 = a[next + from + 1], m2 = a[next + from + 2], m3 = a[next + from + 3];
    for (let k = to; k < n; k++) {
      const p = a[u0 + k], q = a[u1 + k], r = a[u2 + k], s = a[u3 + k];
      a[row + k] -= l0 * p + l1 * q + l2 * r + l3 * s;
      if (next !== row) a[next + k] -= m0 * p + m1 * q + m2 * r + m3 * s;
    }
  }
}
