export interface Complex {
  readonly re: number;
  readonly im: number;
}

/**
 * Eigenvalues of a small real matrix by rows, by size from the largest; of a conjugate pair the upper one first. QR with
 * shifts on the Hessenberg form in complex numbers (J. G. F. Francis, Comput. J. 4, 1961; shifts: J. H. Wilkinson, The Algebraic
 * Eigenvalue Problem, 1965). Undefined if an entry isn't finite, or in the rare case that it does not converge.
 */
export function eigenvalues(matrix: readonly (readonly number[])[]): Complex[] | undefined {
  if (!matrix.flat().every(Number.isFinite)) return undefined;
  const norm = Math.max(0, ...matrix.flat().map(Math.abs));
  if (norm === 0) return matrix.map(() => none);
  const h = hessenberg(matrix.map((row) => row.map((value) => (Math.abs(value) < nothing * norm ? 0 : value / norm))));
  const found: Complex[] = [];
  let high = h.length - 1;
  for (let round = 0; high > 0; round++) {
    if (round > mostRounds) return undefined;
    let low = high;
    while (low > 0 && size(h[low][low - 1]) > Math.max(nothing, rounding * (size(h[low - 1][low - 1]) + size(h[low][low])))) low--;
    if (low === high) {
      found.push(h[high][high]);
      high--;
      round = 0;
    } else step(h, low, high, round % 11 === 10 ? h[high][high - 1] : shiftOf(h, high));
  }
  if (h.length > 0) found.push(h[0][0]);
  return found.map((z) => scaled(settle(z, found), norm)).sort((a, b) => size(b) - size(a) || b.im - a.im);
}

/** Of a matrix whose largest entry is 1. */
const [rounding, nothing] = [1e-15, 1e-30];
/** For one eigenvalue; two or three are usual. */
const mostRounds = 200;

/** Nothing under the diagonal below the main one, by elimination with pivots (similar matrices). */
function hessenberg(matrix: readonly (readonly number[])[]): Complex[][] {
  const a = matrix.map((row) => [...row]);
  for (let k = 1; k < a.length - 1; k++) {
    let pivot = k;
    for (let i = k + 1; i < a.length; i++) if (Math.abs(a[i][k - 1]) > Math.abs(a[pivot][k - 1])) pivot = i;
    if (a[pivot][k - 1] === 0) continue;
    [a[k], a[pivot]] = [a[pivot], a[k]];
    for (const row of a) [row[k], row[pivot]] = [row[pivot], row[k]];
    for (let i = k + 1; i < a.length; i++) {
      const share = a[i][k - 1] / a[k][k - 1];
      a[i] = a[i].map((value, j) => value - share * a[k][j]);
      for (const row of a) row[k] += share * row[i];
    }
  }
  return a.map((row) => row.map((re) => ({ re, im: 0 })));
}

/** The eigenvalue of the last two rows and columns that is nearer to the last entry. */
function shiftOf(h: readonly (readonly Complex[])[], high: number): Complex {
  const [a, b, c, d] = [h[high - 1][high - 1], h[high - 1][high], h[high][high - 1], h[high][high]];
  const half = scaled(minus(a, d), 0.5);
  const root = squareRoot(plus(times(half, half), times(b, c)));
  const far = half.re * root.re + half.im * root.im > 0 ? plus(half, root) : minus(half, root);
  return size(far) === 0 ? d : minus(d, over(times(b, c), far));
}

/** H − s = QR, then RQ + s, on the rows and columns from low to high. */
function step(h: Complex[][], low: number, high: number, shift: Complex): void {
  for (let i = low; i <= high; i++) h[i][i] = minus(h[i][i], shift);
  const turns: { readonly c: Complex; readonly s: Complex }[] = [];
  for (let k = low; k < high; k++) {
    const length = Math.hypot(size(h[k][k]), size(h[k + 1][k]));
    const [c, s] = length === 0 ? [one, none] : [scaled(h[k][k], 1 / length), scaled(h[k + 1][k], 1 / length)];
    turns.push({ c, s });
    for (let j = k; j <= high; j++) {
      const [upper, lower] = [h[k][j], h[k + 1][j]];
      h[k][j] = plus(times(conjugate(c), upper), times(conjugate(s), lower));
      h[k + 1][j] = minus(times(c, lower), times(s, upper));
    }
  }
  turns.forEach(({ c, s }, n) => {
    const k = low + n;
    for (let i = low; i <= Math.min(k + 1, high); i++) {
      const [left, right] = [h[i][k], h[i][k + 1]];
      h[i][k] = plus(times(left, c), times(right, s));
      h[i][k + 1] = minus(times(right, conjugate(c)), times(left, conjugate(s)));
    }
  });
  for (let i = low; i <= high; i++) h[i][i] = plus(h[i][i], shift);
}

/** A zero without a partner across the real axis is real; partners are made exactly conjugate. */
function settle(z: Complex, all: readonly Complex[]): Complex {
  const partner = all.reduce((best, other) => (distance(z, other) < distance(z, best) ? other : best));
  if (partner === z || Math.abs(z.im) <= 1e-9 * size(z)) return { re: z.re, im: 0 };
  return { re: (z.re + partner.re) / 2, im: (z.im - partner.im) / 2 };
}

const [one, none]: readonly Complex[] = [{ re: 1, im: 0 }, { re: 0, im: 0 }];
const distance = (z: Complex, other: Complex): number => Math.hypot(z.re - other.re, z.im + other.im);
const size = ({ re, im }: Complex): number => Math.hypot(re, im);
const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
const scaled = ({ re, im }: Complex, by: number): Complex => ({ re: re * by, im: im * by });
const conjugate = ({ re, im }: Complex): Complex => ({ re, im: -im });

function over(a: Complex, b: Complex): Complex {
  const length = size(b);
  return scaled(times(a, scaled(conjugate(b), 1 / length)), 1 / length);
}

function squareRoot(z: Complex): Complex {
  const length = size(z);
  const re = Math.sqrt((length + Math.abs(z.re)) / 2);
  if (re === 0) return none;
  return z.re >= 0 ? { re, im: z.im / (2 * re) } : { re: Math.abs(z.im) / (2 * re), im: z.im < 0 ? -re : re };
}
