import type { Blocks, Points } from "./columns";

/**
 * Brings the usual layouts of coordinate files into one: from the trailing edge over the upper side to the nose and back
 * below. Understood are one run around the section in either direction, from any end; each side for itself from the nose,
 * with or without a line that counts the points of each; three columns x, upper, lower; and columns y, x.
 */
export function inOneRun(blocks: Blocks): Points | undefined {
  const rows = blocks.flat();
  if (rows.length === 0) return undefined;
  if (rows.every((row) => row.length === 3)) return threeColumns(rows);
  if (rows.some((row) => row.length !== 2)) return undefined;
  const [counts, body] = withoutCounts(blocks as readonly Points[]);
  const points = body.flat();
  const [wide, high] = [extent(points, 0), extent(points, 1)];
  const turned = high > wide ? body.map((block) => block.map(([y, x]) => [x, y] as const)) : body;
  const sides = counts && turned.length === 1 ? split(turned[0], counts) : turned.length === 2 ? turned : turns(turned.flat());
  return sides ? joined(sides) : undefined;
}

const extent = (points: Points, k: 0 | 1): number => Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]));

const threeColumns = (rows: readonly (readonly number[])[]): Points =>
  joined([rows.map(([x, upper]) => [x, upper] as const), rows.map(([x, , lower]) => [x, lower] as const)]);

/** A first line of two whole numbers that together are the points that follow. */
function withoutCounts(blocks: readonly Points[]): readonly [counts: readonly [number, number] | undefined, body: readonly Points[]] {
  const total = blocks.flat().length - 1;
  const [a, b] = blocks[0][0];
  if (!(a > 2 && b > 2 && a + b === total)) return [undefined, blocks];
  const body = [blocks[0].slice(1), ...blocks.slice(1)].filter((block) => block.length > 0);
  return [[a, b], body];
}

const split = (points: Points, [count]: readonly [number, number]): readonly Points[] => [points.slice(0, count), points.slice(count)];

/** Cuts one run where x turns: once at the nose or at the tail; or not at all where the second side starts anew. */
function turns(points: Points): readonly Points[] | undefined {
  const xs = points.map(([x]) => x);
  const length = extent(points, 0);
  const leap = xs.findIndex((x, i) => i > 0 && Math.abs(x - xs[i - 1]) > 0.9 * length);
  if (leap > 0) return [points.slice(0, leap), points.slice(leap)];
  const least = xs.indexOf(Math.min(...xs));
  const most = xs.indexOf(Math.max(...xs));
  const cut = least > 0 && least < xs.length - 1 ? least : most;
  if (!(cut > 0 && cut < xs.length - 1)) return undefined;
  // A blunt tail has an end of each side, so the two share no point.
  const isBlunt = cut === most && Math.min(Math.abs(xs[cut] - xs[cut + 1]), Math.abs(xs[cut] - xs[cut - 1])) < 1e-3 * length;
  const before = isBlunt && Math.abs(xs[cut] - xs[cut - 1]) < 1e-3 * length ? cut : cut + 1;
  return [points.slice(0, before), points.slice(isBlunt ? before : cut)];
}

/** Two sides, each in either direction: the one that is higher on the whole is the upper. */
function joined(sides: readonly Points[]): Points {
  const [a, b] = sides.map((side) => (side[0][0] <= side[side.length - 1][0] ? side : [...side].reverse()));
  const [upper, lower] = area(a) >= area(b) ? [a, b] : [b, a];
  const [nu, nl] = [upper[0], lower[0]];
  const shared = nu[0] === nl[0] && nu[1] === nl[1];
  return [...[...upper].reverse(), ...lower.slice(shared ? 1 : 0)];
}

const area = (side: Points): number => side.slice(1).reduce((sum, [x, y], i) => sum + ((x - side[i][0]) * (y + side[i][1])) / 2, 0);
