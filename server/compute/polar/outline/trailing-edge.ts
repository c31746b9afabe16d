export type Points = readonly (readonly [number, number])[];

/** Power of the chord's share by which the two sides of a blunt trailing edge are brought together. */
const closing = 2;

/**
 * Closes an outline whose trailing edge is blunt, by thinning the section with the square of x. What the blunt base itself
 * adds to drag is not modelled.
 */
export function closed(points: Points): Points {
  const [x0, y0] = points[0];
  const [x1, y1] = points[points.length - 1];
  const nose = noseOf(points);
  const half = [(x1 - x0) / 2, (y1 - y0) / 2];
  return points.map(([x, y], i) => {
    const sign = (i <= nose ? 1 : -1) * Math.max(0, x) ** closing;
    return [x + sign * half[0], y + sign * half[1]];
  });
}

/** Stations between which the sides are taken straight to see whether the edge behind them is rounded. */
const [from, to] = [0.88, 0.96];

/** Thickness at the edge, in chords, that straight sides must have beyond the real one. */
const noticed = 0.0015;

/**
 * Cuts off a rounded trailing edge: the flow leaves at the corner, while a smooth curve there would let it run around.
 * Its sides are drawn on straight to a blunt edge instead.
 */
export function squared(points: Points): Points {
  const nose = noseOf(points);
  const upper = points.slice(0, nose + 1);
  const lower = points.slice(nose).reverse();
  const [a, b] = [upper, lower].map((side) => {
    const [near, far] = [heightAt(side, to), heightAt(side, from)];
    return near + ((1 - to) * (near - far)) / (to - from);
  });
  const gap = Math.abs(points[0][1] - points[points.length - 1][1]);
  if (!(a - b > gap + noticed)) return points;
  const kept = (side: Points) => side.filter(([x], i) => x < to && i > 0);
  return [[1, a], ...kept(upper), ...kept(lower).reverse().slice(1), [1, b]];
}

const noseOf = (points: Points): number => points.reduce((best, [x], i) => (x < points[best][0] ? i : best), 0);

/** Height of a side that runs from the trailing edge forward. */
function heightAt(side: Points, x: number): number {
  const i = Math.max(1, side.findIndex((point) => point[0] <= x));
  const [[x1, y1], [x0, y0]] = [side[i - 1], side[i]];
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
