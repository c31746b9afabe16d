export interface Complex {
  readonly re: number;
  readonly im: number;
}

/**
 * Eigenvalues of a small real matrix by rows, by size from the largest; of a conjugate pair the upper one first. From the
 * characteristic polynomial (U. Le Verrier's method in D. K. Faddeev's form) and its zeros all at once (O. Aberth, Math.
 * Comp. 27, 1973), which is sound up to some six rows. Undefined if an entry isn't finite.
 */
export function eigenvalues(matrix: readonly (readonly number[])[]): Complex[] | undefined {
  if (!matrix.flat().every(Number.isFinite)) return undefined;
  return zeros(characteristic(matrix)).sort((a, b) => size(b) - size(a) || b.im - a.im);
}

/** Coefficients from the constant up; the last is 1. */
function characteristic(a: readonly (readonly number[])[]): number[] {
  const n = a.length;
  const coefficients = new Array<number>(n + 1).fill(0);
  coefficients[n] = 1;
  let m = a.map((row) => row.map(() => 0));
  for (let k = 1; k <= n; k++) {
    const shifted = m.map((row, i) => row.map((value, j) => value + (i === j ? coefficients[n - k + 1] : 0)));
    m = a.map((row) => a.map((_, j) => row.reduce((sum, value, l) => sum + value * shifted[l][j], 0)));
    coefficients[n - k] = -m.reduce((sum, row, i) => sum + row[i], 0) / k;
  }
  return coefficients;
}

/** Zeros of a real polynomial with leading coefficient 1. */
function zeros(coefficients: readonly number[]): Complex[] {
  const least = coefficients.findIndex((c) => c !== 0);
  const rest = coefficients.slice(least);
  const n = rest.length - 1;
  const none = Array.from({ length: least }, (): Complex => ({ re: 0, im: 0 }));
  if (n === 0) return none;
  const radii = rest.slice(0, n).map((c, k) => (c === 0 ? 0 : Math.abs(c) ** (1 / (n - k))));
  const radius = Math.max(...radii);
  // Not in a symmetrical pattern, from which conjugate pairs could not part into real zeros.
  let at = Array.from({ length: n }, (_, k) => polar(radius, (2 * Math.PI * k) / n + 0.4));
  for (let round = 0; round < 200; round++) {
    let moved = 0;
    at = at.map((z, k) => {
      const step = aberthStep(rest, at, z, k);
      moved = Math.max(moved, size(step) / Math.max(size(z), 1e-300));
      return minus(z, step);
    });
    if (moved < 1e-15) break;
  }
  return [...at.map((z) => settle(z, at)), ...none];
}

function aberthStep(coefficients: readonly number[], at: readonly Complex[], z: Complex, k: number): Complex {
  let value: Complex = { re: 0, im: 0 };
  let slope: Complex = { re: 0, im: 0 };
  for (let i = coefficients.length - 1; i >= 0; i--) {
    slope = plus(times(slope, z), value);
    value = plus(times(value, z), { re: coefficients[i], im: 0 });
  }
  if (size(value) === 0) return { re: 0, im: 0 };
  const others = at.reduce((sum: Complex, other, j) => {
    const gap = minus(z, other);
    return j === k || size(gap) === 0 ? sum : plus(sum, over({ re: 1, im: 0 }, gap));
  }, { re: 0, im: 0 });
  const step = over(value, minus(slope, times(value, others)));
  return Number.isFinite(step.re) && Number.isFinite(step.im) ? step : { re: 0, im: 0 };
}

/** A zero without a partner across the real axis is real; partners are made exactly conjugate. */
function settle(z: Complex, all: readonly Complex[]): Complex {
  if (Math.abs(z.im) <= 1e-9 * size(z)) return { re: z.re, im: 0 };
  const partner = all.reduce((best, other) => (distance(z, other) < distance(z, best) ? other : best));
  return { re: (z.re + partner.re) / 2, im: (z.im - partner.im) / 2 };
}

const distance = (z: Complex, other: Complex): number => Math.hypot(z.re - other.re, z.im + other.im);
const size = ({ re, im }: Complex): number => Math.hypot(re, im);
const polar = (radius: number, angle: number): Complex => ({ re: radius * Math.cos(angle), im: radius * Math.sin(angle) });
const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });

function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}
