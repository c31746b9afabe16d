import type { MeanLine } from "./mean-line";

/** One side of an outline, from the nose aft: roots of x, in which a round nose is smooth, heights, and their slopes. */
interface Side {
  readonly root: readonly number[];
  readonly height: readonly number[];
  readonly rise: readonly number[];
}

/** Half the width over which a slope is taken, as an angle: wide enough to bridge the noise of a digitised outline. */
const reach = Math.PI / 40;

/**
 * Mean line of an outline given by points in chords, from the trailing edge over the upper side to the nose and back:
 * half way between the sides at each x, the x axis taken as chord line. Undefined for fewer than five points, or an
 * outline that has no length or no two sides.
 */
export function outlineMeanLine(points: readonly (readonly [number, number])[]): MeanLine | undefined {
  if (points.length < 5 || !points.flat().every(Number.isFinite)) return undefined;
  const xs = points.map(([x]) => x);
  const nose = xs.indexOf(Math.min(...xs));
  const upper = side(points.slice(0, nose + 1));
  const lower = side(points.slice(nose));
  if (!upper || !lower) return undefined;
  const at = (x: number) => (interpolated(upper, Math.sqrt(x)) + interpolated(lower, Math.sqrt(x))) / 2;
  return {
    height: at,
    slope: (x) => {
      const angle = Math.acos(1 - 2 * Math.max(0, Math.min(1, x)));
      const low = (1 - Math.cos(Math.max(0, angle - reach))) / 2;
      const high = (1 - Math.cos(Math.min(Math.PI, angle + reach))) / 2;
      return (at(high) - at(low)) / (high - low);
    },
  };
}

function side(points: readonly (readonly [number, number])[]): Side | undefined {
  const ordered = [...points].sort((a, b) => a[0] - b[0]);
  const start = ordered[0][0];
  const length = ordered[ordered.length - 1][0] - start;
  if (!(length > 0)) return undefined;
  const kept = ordered.filter(([x], i) => i === 0 || x > ordered[i - 1][0]);
  const root = kept.map(([x]) => Math.sqrt((x - start) / length));
  const height = kept.map(([, y]) => y / length);
  const steepness = root.slice(1).map((u, i) => (height[i + 1] - height[i]) / (u - root[i]));
  const rise = root.map((u, i) => {
    if (i === 0) return steepness[0];
    if (i === root.length - 1) return steepness[i - 1];
    const [before, after] = [u - root[i - 1], root[i + 1] - u];
    return (steepness[i - 1] * after + steepness[i] * before) / (before + after);
  });
  return { root, height, rise };
}

/** Cubic between the points. */
function interpolated({ root, height, rise }: Side, u: number): number {
  let i = 1;
  while (i < root.length - 1 && root[i] < u) i++;
  const width = root[i] - root[i - 1];
  const t = Math.max(0, Math.min(1, (u - root[i - 1]) / width));
  const s = 1 - t;
  return s * s * (1 + 2 * t) * height[i - 1] + t * t * (1 + 2 * s) * height[i] +
    s * t * width * (s * rise[i - 1] - t * rise[i]);
}
