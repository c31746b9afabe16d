/** A cubic with continuous second derivative through values at rising places; its ends have no curvature. */
export interface Spline {
  readonly places: Float64Array;
  readonly values: Float64Array;
  /** Slope at each place. */
  readonly slopes: Float64Array;
}

export function spline(places: Float64Array, values: Float64Array): Spline {
  const n = places.length;
  const diagonal = new Float64Array(n);
  const slopes = new Float64Array(n);
  const width = (i: number) => places[i + 1] - places[i];
  const rise = (i: number) => (values[i + 1] - values[i]) / width(i);
  diagonal[0] = 2;
  slopes[0] = 3 * rise(0);
  for (let i = 1; i < n; i++) {
    const last = i === n - 1;
    const below = last ? 1 : 1 / width(i - 1);
    const above = last ? 0 : 1 / width(i);
    const before = i === 1 ? 1 : 1 / width(i - 1);
    const factor = below / diagonal[i - 1];
    diagonal[i] = 2 * (below + above) - factor * before;
    const right = last ? 3 * rise(n - 2) : 3 * (rise(i - 1) * below + rise(i) * above);
    slopes[i] = right - factor * slopes[i - 1];
  }
  slopes[n - 1] /= diagonal[n - 1];
  for (let i = n - 2; i >= 0; i--) slopes[i] = (slopes[i] - (i === 0 ? 1 : 1 / width(i)) * slopes[i + 1]) / diagonal[i];
  return { places, values, slopes };
}

export function splineAt({ places, values, slopes }: Spline, place: number): number {
  let low = 0;
  let high = places.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (places[middle] > place) high = middle;
    else low = middle;
  }
  const width = places[high] - places[low];
  const t = (place - places[low]) / width;
  const s = 1 - t;
  return s * s * (1 + 2 * t) * values[low] + t * t * (1 + 2 * s) * values[high] +
    s * t * width * (s * slopes[low] - t * slopes[high]);
}
