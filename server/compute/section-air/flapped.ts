import type { SectionAir } from "./section-air";

/** A plain flap: its share of the chord, and its deflection in rad, trailing edge down positive. */
export interface Flap {
  readonly chordShare: number;
  readonly deflection: number;
}

const degree = Math.PI / 180;

/**
 * What a small deflection does by thin-section theory: the turn of the angle of no lift for each of the flap, and the moment
 * about the quarter chord per radian (H. Glauert, ARC R&M 1095, 1927). Shares of the chord 0 to 1.
 */
export function flapTheory(chordShare: number): { readonly effect: number; readonly moment: number } {
  const theta = Math.acos(2 * Math.min(1, Math.max(0, chordShare)) - 1);
  return { effect: 1 - (theta - Math.sin(theta)) / Math.PI, moment: (-Math.sin(theta) * (1 - Math.cos(theta))) / 2 };
}

/**
 * Share of the theory that plain flaps with closed gaps reach: 0.9 at small deflections, half way down to 0.5 at 20 deg. A
 * curve laid through the trend of handbooks (USAF DATCOM 6.1.1; from memory, medium): 0.85 to 0.95, then 0.5 to 0.6 beyond 20.
 */
export const flapEffectiveness = (deflection: number): number => 0.5 + 0.4 / (1 + (Math.abs(deflection) / (20 * degree)) ** 4);

/** No lift is gained beyond this, and no flap counts for more than this share of the chord in what handbooks give. */
const [farthest, widest] = [60 * degree, 0.5];

/**
 * A section with a plain flap turned. Angle of no lift and moment: theory, less what real flaps lack. Lift limits, both: they
 * move by a share of the lift the flap gives at one angle, 0.4 at a Reynolds number of a million and 0.3 at 100,000 with a
 * quarter of the chord, less with more chord: 0.4 to 0.6 at 30 to 40 deg (handbook trend, as in B. W. McCormick, Aerodynamics,
 * Aeronautics and Flight Mechanics, ch. 3; from memory, medium; the share at low Reynolds numbers low). Turned up it takes
 * away what it gives turned down. Drag: 1.7 × chord share^1.38 × sin² of the deflection on that at a lift as far from the
 * limits (McCormick, ch. 4, plain flaps; from memory, high). Not modelled: gaps, hinge lines that trip the flow, wide flaps.
 */
export function flapped(air: SectionAir, { chordShare, deflection }: Flap): SectionAir {
  const real = effectiveTurn(deflection);
  const { effect, moment } = flapTheory(chordShare);
  const shift = limitShift(air.reynolds, { chordShare, deflection });
  const dragged = 1.7 * shareOf(chordShare) ** 1.38 * Math.sin(deflection) ** 2;
  return {
    reynolds: air.reynolds, liftSlope: air.liftSlope, origin: air.origin, doubts: air.doubts,
    zeroLiftAngle: air.zeroLiftAngle - effect * real,
    moment: air.moment + moment * real,
    liftMax: air.liftMax + shift,
    get liftMin() {
      return air.liftMin + shift;
    },
    get provisional() {
      return air.provisional ?? false;
    },
    drag: (lift) => air.drag(lift - shift) + dragged,
  };
}

const shareOf = (chordShare: number): number => Math.min(widest, Math.max(0, chordShare));

/** The deflection that counts, rad. */
function effectiveTurn(deflection: number): number {
  const turned = Math.min(farthest, Math.max(-farthest, deflection));
  return flapEffectiveness(turned) * turned;
}

/** By how much a flap moves both lift limits. */
export function limitShift(reynolds: number, { chordShare, deflection }: Flap): number {
  return limitShare(reynolds) * ((1 - shareOf(chordShare)) / 0.75) * 2 * Math.PI * flapTheory(chordShare).effect * effectiveTurn(deflection);
}

function limitShare(reynolds: number): number {
  const decade = Math.min(1, Math.max(0, Math.log10(reynolds / 1e5)));
  return 0.3 + 0.1 * decade;
}
