/** A point of a polar. Angle in rad to the x axis of the coordinates, moment about the quarter chord, nose up. */
export interface PolarPoint {
  readonly angle: number;
  readonly lift: number;
  readonly drag: number;
  readonly moment: number;
}

export interface Summary {
  readonly zeroLiftAngle: number;
  /** Per radian. */
  readonly liftSlope: number;
  /** About the quarter chord, in attached flow. */
  readonly moment: number;
  readonly liftMax: number;
  readonly angleAtLiftMax: number;
  readonly dragMin: number;
}

const degree = Math.PI / 180;

/** The straight part of the lift curve: angles above that of no lift, and the share of the highest lift it ends at. */
const [from, to, share] = [1 * degree, 7 * degree, 0.8];

/**
 * What a polar comes to, from its points by rising angle. Angle of no lift and slope are those of the straight line through
 * the attached part of the lift curve, as one would fit it to a measurement; the curve itself may be kinked by bubbles, so
 * the line is not let go farther than a degree from where the curve crosses nothing, and not at all if `symmetric`.
 * Undefined for points that have no such part.
 */
export function summarise(points: readonly PolarPoint[], symmetric: boolean): Summary | undefined {
  if (points.length < 4) return undefined;
  const top = points.reduce((best, point, i) => (point.lift > points[best].lift ? i : best), 0);
  const rising = points.slice(0, top + 1);
  const { lift: liftMax, angle: angleAtLiftMax } = points[top];
  const crossing = symmetric ? 0 : crossingOf(rising);
  const attached = attachedPart(rising, liftMax, crossing);
  if (attached.length < 3) return undefined;
  const mean = (of: (point: PolarPoint) => number) => attached.reduce((sum, point) => sum + of(point), 0) / attached.length;
  const [angle, lift] = [mean((point) => point.angle), mean((point) => point.lift)];
  const slope = mean((point) => (point.angle - angle) * (point.lift - lift)) / mean((point) => (point.angle - angle) ** 2);
  if (!(slope > 0)) return undefined;
  const fitted = angle - lift / slope;
  const play = symmetric ? 0 : from;
  const zeroLiftAngle = crossing === undefined ? fitted : Math.min(crossing + play, Math.max(crossing - play, fitted));
  const through = mean((point) => (point.angle - zeroLiftAngle) * point.lift) / mean((point) => (point.angle - zeroLiftAngle) ** 2);
  return {
    zeroLiftAngle, liftSlope: symmetric || zeroLiftAngle === fitted ? slope : through,
    moment: symmetric ? 0 : mean((point) => point.moment), liftMax, angleAtLiftMax,
    dragMin: Math.min(...rising.map((point) => point.drag)),
  };
}

/** The angle at which lift first rises past nothing. */
function crossingOf(rising: readonly PolarPoint[]): number | undefined {
  const after = rising.findIndex((point, i) => i > 0 && point.lift > 0 && rising[i - 1].lift <= 0);
  if (after < 1) return undefined;
  const [a, b] = [rising[after - 1], rising[after]];
  return a.angle - (a.lift * (b.angle - a.angle)) / (b.lift - a.lift);
}

function attachedPart(rising: readonly PolarPoint[], liftMax: number, crossing: number | undefined): readonly PolarPoint[] {
  const below = rising.filter((point) => point.lift <= share * liftMax);
  if (crossing === undefined) return below.slice(0, 8);
  const straight = below.filter((point) => point.angle >= crossing + from && point.angle <= crossing + to);
  return straight.length >= 3 ? straight : rising.filter((point) => point.angle >= crossing - from).slice(0, 4);
}
