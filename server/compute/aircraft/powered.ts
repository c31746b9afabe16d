import type { Vec3 } from "../../model/design/geometry";
import { slipstream } from "../propeller/slipstream";
import type { StripLoad } from "../lattice/strip-loads";
import type { PitchStability } from "../stability/neutral-point";

/** A propeller pulling in level flight. */
export interface Pulling {
  readonly path: string;
  readonly hub: Vec3;
  /** m */
  readonly diameter: number;
  /** N, N m */
  readonly thrust: number;
  readonly torque: number;
  /** Force across the shaft for each m/s of air across it, N s/m. */
  readonly crossForce: number;
}

export interface PoweredMargin {
  /** In mean chords. */
  readonly margin: number;
  /** What the propellers' own force across the flow takes from it or gives it, and what their slipstream over the surfaces does. */
  readonly byForce: number;
  readonly bySlipstream: number;
}

/**
 * Static margin with propellers pulling in level flight at a speed. Each has a force across its shaft in proportion to the angle
 * of the air there (the wing's upwash counted). Its slipstream is faster than the flight, and is turned towards the shaft by what
 * thrust and that force take from its momentum, so that surfaces in it meet less of each change of angle; and a wing that lifts
 * more by it has more downwash at the tail, in proportion. Not modelled: the swirl, how the slipstream drifts and mixes, thrust that
 * changes with angle.
 */
export function poweredMargin(
  pitch: PitchStability, propellers: readonly Pulling[],
  { speed, density, x }: { readonly speed: number; readonly density: number; readonly x: number },
): PoweredMargin | undefined {
  const { lattice, liftSlope, momentSlope, reference: { area, meanChord, meanChordX } } = pitch;
  const pressure = (density * speed ** 2) / 2;
  const still: Share = { lift: liftSlope * area, moment: (momentSlope * meanChord + liftSlope * (x - meanChordX - meanChord / 4)) * area };
  const force = propellers.map((one): Share => {
    const lift = acrossOf(one, speed, lattice.upwash) / pressure;
    return { lift, moment: lift * (x - one.hub[0]) };
  });
  const blown = lattice.strips.map((strip): Blown => {
    const own = 2 * strip.circulation.slope * strip.width;
    const downwash = strip.kind === "tailplane" ? pitch.downwashSlope ?? 0 : 0;
    const gain = propellers.reduce((sum, one) => sum + gainIn(one, strip, downwash, { speed, density }, lattice.upwash), 0);
    return { kind: strip.kind, own, gain: own * gain, arm: x - strip.x - strip.chord / 4, downwash };
  });
  const wing = blown.filter(({ kind }) => kind === "wing");
  const wingGain = sumOf(wing, ({ gain }) => gain) / sumOf(wing, ({ own }) => own);
  const slipped = blown.map(({ own, gain, arm, downwash }): Share => {
    // Of a tail's lift per radian without downwash, own / (1 − downwash), the wing's added downwash takes its part.
    const lift = gain - (downwash > 0 ? (own / (1 - downwash)) * downwash * wingGain : 0);
    return { lift, moment: lift * arm };
  });
  const marginOf = (shares: readonly Share[]) => -sumOf(shares, ({ moment }) => moment) / (sumOf(shares, ({ lift }) => lift) * meanChord);
  const [none, forced, margin] = [marginOf([still]), marginOf([still, ...force]), marginOf([still, ...force, ...slipped])];
  return Number.isFinite(margin) ? { margin, byForce: forced - none, bySlipstream: margin - forced } : undefined;
}

/** Per radian over dynamic pressure, m² and m³, nose up about the balance point. */
interface Share {
  readonly lift: number;
  readonly moment: number;
}

interface Blown {
  readonly kind: string;
  /** Lift per radian over dynamic pressure without power, and what the slipstream adds. */
  readonly own: number;
  readonly gain: number;
  readonly arm: number;
  readonly downwash: number;
}

const sumOf = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((sum, one) => sum + of(one), 0);

/** Force across the shaft per radian of the aircraft's angle, N. */
const acrossOf = ({ crossForce, hub }: Pulling, speed: number, upwash: (point: Vec3) => number): number => crossForce * speed * (1 + upwash(hub));

/** By which share a strip's lift per radian grows in a slipstream; 0 outside it and ahead of the disc. */
function gainIn(
  one: Pulling, strip: StripLoad, downwash: number, { speed, density }: { readonly speed: number; readonly density: number }, upwash: (point: Vec3) => number,
): number {
  const distance = strip.x - one.hub[0];
  if (distance <= 0) return 0;
  const { radius, velocity } = slipstream({ load: one, diameter: one.diameter, speed, density, distance });
  if (Math.hypot(strip.y - one.hub[1], strip.z - one.hub[2]) > radius) return 0;
  const flux = density * Math.PI * radius ** 2 * velocity;
  const turned = flux > 0 ? (one.thrust + acrossOf(one, speed, upwash)) / (flux * velocity) : 0;
  return (velocity / speed) ** 2 * (1 - turned / (1 - downwash)) - 1;
}
