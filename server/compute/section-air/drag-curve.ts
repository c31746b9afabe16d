/** Drag over lift at one Reynolds number, finite for any lift. */
export interface DragCurve {
  /** Lift of the lowest point it rests on, and of the highest: the lift limit. */
  readonly least: number;
  readonly most: number;
  readonly drag: (lift: number) => number;
}

interface Point {
  readonly lift: number;
  readonly drag: number;
}

/** Points closer in lift than this are one. */
const apart = 1e-3;

/**
 * What a section beyond its lift limit is charged: no flow after the stall is worked out, so this only says that it is
 * dear, and the more so the farther. Common practice, no source.
 */
const beyond = (over: number): number => 0.2 * over + over * over;

/** Below the lowest point drag goes on rising as it did there, within these bounds per unit of lift, and a little faster with lift squared. */
const [flattest, steepest, bend] = [0, 0.05, 0.05];

/** Drag changes by no more than this per unit of lift. */
const sheer = 1;

/**
 * The curve through the points of a polar, by rising angle, up to its highest lift. Where lift goes to and fro with the
 * angle, as with bubbles at low Reynolds numbers, only points that go on from the middle of the polar count. Where the flow
 * parts and drag leaps while lift stands still, the lifts before the leap are charged with a part of it, so that little more
 * lift never costs much.
 */
export function dragCurve(points: readonly Point[]): DragCurve {
  const rising = evened(risingPart(points));
  const [first, last] = [rising[0], rising[rising.length - 1]];
  const second = rising[Math.min(1, rising.length - 1)];
  const fall = second.lift > first.lift ? (first.drag - second.drag) / (second.lift - first.lift) : 0;
  const slope = Math.min(steepest, Math.max(flattest, fall));
  const drag = (lift: number): number => {
    if (lift >= last.lift) return last.drag + beyond(lift - last.lift);
    if (lift <= first.lift) return first.drag + (first.lift - lift) * (slope + bend * (first.lift - lift));
    const i = rising.findIndex((point) => point.lift > lift);
    const [a, b] = [rising[i - 1], rising[i]];
    return a.drag + ((lift - a.lift) / (b.lift - a.lift)) * (b.drag - a.drag);
  };
  return { least: first.lift, most: last.lift, drag };
}

function risingPart(points: readonly Point[]): readonly Point[] {
  const top = indexOfLeast(points, ({ lift }) => -lift);
  const middle = indexOfLeast(points.slice(0, top + 1), ({ lift }) => Math.abs(lift));
  const kept = [points[middle]];
  for (let i = middle + 1; i < top; i++) {
    if (points[i].lift > kept[kept.length - 1].lift + apart && points[i].lift < points[top].lift - apart) kept.push(points[i]);
  }
  if (top > middle) kept.push(points[top]);
  for (let i = middle - 1; i >= 0; i--) if (points[i].lift < kept[0].lift - apart) kept.unshift(points[i]);
  return kept;
}

function evened(points: readonly Point[]): readonly Point[] {
  const drags = points.map(({ drag }) => drag);
  const raise = (i: number, from: number) => {
    drags[i] = Math.max(drags[i], drags[from] - sheer * Math.abs(points[i].lift - points[from].lift));
  };
  for (let i = 1; i < drags.length; i++) raise(i, i - 1);
  for (let i = drags.length - 2; i >= 0; i--) raise(i, i + 1);
  return points.map(({ lift }, i) => ({ lift, drag: drags[i] }));
}

function indexOfLeast<T>(list: readonly T[], of: (one: T) => number): number {
  let best = 0;
  list.forEach((one, i) => {
    if (of(one) < of(list[best])) best = i;
  });
  return best;
}
