/** Rising points as a smooth curve that rises too (F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5, 1984). */
export function risingCurve(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const rise = rises(xs, ys);
  const slope = xs.map((_, i) => (i === 0 ? rise[0] : i === xs.length - 1 ? rise[i - 1] : between(xs, rise, i)));
  return hermite(xs, ys, slope);
}

/**
 * A smooth curve through points with rising x that does not swing between them: where they turn, it is level (as
 * `risingCurve`). Straight on beyond its ends.
 */
export function smoothCurve(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const rise = rises(xs, ys);
  const last = xs.length - 1;
  const slope = xs.map((_, i) => {
    if (i === 0) return rise[0];
    if (i === last) return rise[i - 1];
    return rise[i - 1] * rise[i] > 0 ? between(xs, rise, i) : 0;
  });
  const inside = hermite(xs, ys, slope);
  return (x) => (x < xs[0] ? ys[0] + slope[0] * (x - xs[0]) : x > xs[last] ? ys[last] + slope[last] * (x - xs[last]) : inside(x));
}

const rises = (xs: readonly number[], ys: readonly number[]): number[] => xs.slice(1).map((x, i) => (ys[i + 1] - ys[i]) / (x - xs[i]));

function between(xs: readonly number[], rise: readonly number[], i: number): number {
  const [a, b] = [xs[i] - xs[i - 1], xs[i + 1] - xs[i]];
  return (3 * (a + b)) / ((2 * b + a) / rise[i - 1] + (b + 2 * a) / rise[i]);
}

function hermite(xs: readonly number[], ys: readonly number[], slope: readonly number[]): (x: number) => number {
  return (x) => {
    let i = 1;
    while (i < xs.length - 1 && xs[i] < x) i++;
    const width = xs[i] - xs[i - 1];
    const t = (x - xs[i - 1]) / width;
    const s = 1 - t;
    return s * s * (1 + 2 * t) * ys[i - 1] + t * t * (1 + 2 * s) * ys[i] + s * t * width * (s * slope[i - 1] - t * slope[i]);
  };
}
