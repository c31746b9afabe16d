import type { SectionAir } from "./section-air";

/**
 * Between two sections, or one section at two Reynolds numbers: `share` 0 is the first, 1 the second, held to that. Angles
 * and limits go linearly, drag and Reynolds number by their logarithms, drag at lifts that are the same share of each one's limit.
 */
export function blended(a: SectionAir, b: SectionAir, share: number): SectionAir {
  if (share <= 0 || a === b) return a;
  if (share >= 1) return b;
  const mean = (of: (air: SectionAir) => number) => (1 - share) * of(a) + share * of(b);
  const liftMax = mean((air) => air.liftMax);
  let least: number | undefined;
  const liftMin = () => (least ??= mean((air) => air.liftMin));
  const dragOf = (air: SectionAir, lift: number) => Math.log(air.drag(likeLift(air, lift, liftMax, liftMin)));
  return {
    reynolds: Math.exp(mean((air) => Math.log(air.reynolds))), zeroLiftAngle: mean((air) => air.zeroLiftAngle),
    liftSlope: mean((air) => air.liftSlope), moment: mean((air) => air.moment), liftMax,
    get liftMin() {
      return liftMin();
    },
    get provisional() {
      return (a.provisional ?? false) || (b.provisional ?? false);
    },
    drag: (lift) => Math.exp((1 - share) * dragOf(a, lift) + share * dragOf(b, lift)),
    origin: share < 0.5 ? a.origin : b.origin,
    doubts: [...new Set([...a.doubts, ...b.doubts])],
  };
}

/** Lifts down to this are taken as they are, so that how a section stalls pushing down is not asked for. */
const shallow = -0.25;

/** The lift of one of two sections that stands to its limits as `lift` does to those between the two. */
function likeLift(air: SectionAir, lift: number, liftMax: number, liftMin: () => number): number {
  if (lift > 0) return (lift * air.liftMax) / liftMax;
  if (lift >= shallow) return lift;
  const [own, common] = [air.liftMin - shallow, liftMin() - shallow];
  return own < 0 && common < 0 ? shallow + ((lift - shallow) * own) / common : lift;
}
