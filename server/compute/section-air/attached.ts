import type { PolarDoubt } from "../polar/polar";
import type { DragCurve } from "./drag-curve";
import type { SectionAir } from "./section-air";

/** What is known of a section the right way up, at one Reynolds number: all but how it stalls pushing down. */
export interface Attached {
  readonly reynolds: number;
  readonly zeroLiftAngle: number;
  readonly liftSlope: number;
  readonly moment: number;
  readonly liftMax: number;
  readonly curve: DragCurve;
  readonly origin: SectionAir["origin"];
  readonly doubts: readonly PolarDoubt[];
}

/** How a section stalls pushing down, as numbers of the section turned upside down. */
export interface Below {
  readonly liftMax: number;
  readonly drag: (lift: number) => number;
  /** An estimate, until the polar is worked out. */
  readonly provisional: boolean;
}

/** Width in lift over which drag goes over from the one polar to the other. */
const seam = 0.1;

/** A limit is at least this far from no lift. */
const least = 0.1;

/** Both sides as one. `below` is asked for once, and only if it is needed. */
export function joined(above: Attached, below: () => Below): SectionAir {
  let known: Below | undefined;
  const under = () => (known ??= below());
  const { curve } = above;
  return {
    reynolds: above.reynolds, zeroLiftAngle: above.zeroLiftAngle, liftSlope: above.liftSlope, moment: above.moment,
    liftMax: Math.max(least, above.liftMax), origin: above.origin, doubts: above.doubts,
    get liftMin() {
      return -Math.max(least, under().liftMax);
    },
    get provisional() {
      return known?.provisional ?? false;
    },
    drag: (lift) => {
      const share = Math.min(1, (curve.least + seam - lift) / seam);
      return share <= 0 ? curve.drag(lift) : curve.drag(lift) ** (1 - share) * under().drag(-lift) ** share;
    },
  };
}

/** Of a symmetric section. */
export function mirrored(above: Attached): SectionAir {
  const { curve } = above;
  return joined({ ...above, curve: { ...curve, least: -Infinity, drag: (lift) => curve.drag(Math.abs(lift)) } },
    () => ({ liftMax: above.liftMax, drag: (lift) => curve.drag(Math.abs(lift)), provisional: false }));
}

/** Share by which the limits move for the lift that camber gives at no angle, as computed polars of NACA sections come out. */
const shift = 0.8;

/** An estimate from the polar the right way up: camber takes from the one limit what it gives to the other. */
export function estimatedBelow({ liftMax, zeroLiftAngle, curve }: Attached, provisional: boolean): Below {
  const limit = Math.max(0.2, liftMax + 2 * shift * 2 * Math.PI * zeroLiftAngle);
  return { liftMax: limit, provisional, drag: (lift) => curve.drag(-lift) + Math.max(0, lift - limit) };
}
