import type { SectionAir } from "./section-air";

/**
 * Between two sections, or one section at two Reynolds numbers: `share` 0 is the first, 1 the second, held to that. Angles
 * and limits go linearly, drag and Reynolds number by their logarithms, drag at lifts that are the same share of each one's limit.
 */
export function blended(a: SectionAir, b: SectionAir, share: number): SectionAir {
  if (share <= 0 || a === b) return a;
  return share >= 1 ? b : new Blend(a, b, share);
}

/** Made for every strip at every speed: what is seldom asked for is worked out when it is. */
class Blend implements SectionAir {
  readonly liftMax: number;

  constructor(private readonly a: SectionAir, private readonly b: SectionAir, private readonly share: number) {
    this.liftMax = mix(a.liftMax, b.liftMax, share);
  }

  get reynolds(): number {
    return Math.exp(mix(Math.log(this.a.reynolds), Math.log(this.b.reynolds), this.share));
  }

  get zeroLiftAngle(): number {
    return mix(this.a.zeroLiftAngle, this.b.zeroLiftAngle, this.share);
  }

  get liftSlope(): number {
    return mix(this.a.liftSlope, this.b.liftSlope, this.share);
  }

  get moment(): number {
    return mix(this.a.moment, this.b.moment, this.share);
  }

  get liftMin(): number {
    return mix(this.a.liftMin, this.b.liftMin, this.share);
  }

  get provisional(): boolean {
    return (this.a.provisional ?? false) || (this.b.provisional ?? false);
  }

  get origin(): SectionAir["origin"] {
    return this.share < 0.5 ? this.a.origin : this.b.origin;
  }

  get doubts(): SectionAir["doubts"] {
    return [...new Set([...this.a.doubts, ...this.b.doubts])];
  }

  drag(lift: number): number {
    return Math.exp(mix(Math.log(this.a.drag(this.likeLift(this.a, lift))), Math.log(this.b.drag(this.likeLift(this.b, lift))), this.share));
  }

  /** The lift of one of the two that stands to its limits as `lift` does to those between them. */
  private likeLift(air: SectionAir, lift: number): number {
    if (lift > 0) return (lift * air.liftMax) / this.liftMax;
    if (lift >= shallow) return lift;
    const [own, common] = [air.liftMin - shallow, this.liftMin - shallow];
    return own < 0 && common < 0 ? shallow + ((lift - shallow) * own) / common : lift;
  }
}

const mix = (a: number, b: number, share: number): number => (1 - share) * a + share * b;

/** Lifts down to this are taken as they are, so that how a section stalls pushing down is not asked for. */
const shallow = -0.25;
