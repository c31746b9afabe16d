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
 * the attached part of the lift curve, as one would fit it to a measurement; the curve itself may be kinked by bubbles.
 * Undefined for points that have no such part.
 */
export function summarise(points: readonly PolarPoint[]): Summary | undefined {
  if (points.length < 4) return undefined;
  const top = points.reduce((best, point, i) => (point.lift > points[best].lift ? i : best), 0);
  const rising = points.slice(0, top + 1);
  const { lift: liftMax, angle: angleAtLiftMax } = points[top];
  const attached = attachedPart(rising, liftMax);
  if (attached.length < 3) return undefined;
  const mean = (of: (point: PolarPoint) => number) => attached.reduce((sum, point) => sum + of(point), 0) / attached.length;
  const [angle, lift] = [mean((point) => point.angle), mean((point) => point.lift)];
  const liftSlope = mean((point) => (point.angle - angle) * (point.lift - lift)) / mean((point) => (point.angle - angle) ** 2);
  if (!(liftSlope > 0)) return undefined;
  return {
    zeroLiftAngle: angle - lift / liftSlope, liftSlope, moment: mean((point) => point.moment), liftMax, angleAtLiftMax,
    dragMin: Math.min(...rising.map((point) => point.drag)),
  };
}

function attachedPart(rising: readonly PolarPoint[], liftMax: number): readonly PolarPoint[] {
  const after = rising.findIndex((point, i) => i > 0 && point.lift > 0 && rising[i - 1].lift <= 0);
  const below = rising.filter((point) => point.lift <= share * liftMax);
  if (after < 1) return below.slice(0, 8);
  const [a, b] = [rising[after - 1], rising[after]];
  const crossing = a.angle - (a.lift * (b.angle - a.angle)) / (b.lift - a.lift);
  const straight = below.filter((point) => point.angle >= crossing + from && point.angle <= crossing + to);
  return straight.length >= 3 ? straight : below.filter((point) => point.angle >= crossing - from);
}
