import { reynoldsOf, type Flow } from "../drag/flow";
import { blended } from "../section-air/blended";
import { flapped, limitShift } from "../section-air/flapped";
import type { SectionAir, SectionsAir } from "../section-air/section-air";
import type { AirBasis } from "./air-basis";
import type { AirStrip, StripFlap } from "./air-strips";
import { deflectionAt } from "./pitch-controls";

/** The sections of an aeroplane at one speed, each at its own Reynolds number. */
export interface AirAt {
  readonly flow: Flow;
  /** Of each strip, with its flap as it stands in neutral unless the stick moves it. */
  readonly strips: readonly SectionAir[];
  readonly plates: readonly SectionAir[];
}

/** Undefined where a section isn't known; all are asked for, so that what is missing is wanted at once. */
export function airAt({ strips, plates, lookups }: AirBasis, sections: SectionsAir, flow: Flow): AirAt | undefined {
  const airs = lookups.map(({ section, chord }) => sections(section, reynoldsOf(flow, chord)));
  const known = airs.filter((air) => air !== undefined);
  if (known.length < airs.length) return undefined;
  let before: SectionAir | undefined;
  const made = strips.map((strip) => (before = before && strip.weight === 0 ? before : airOf(known, strip)));
  return { flow, strips: made, plates: plates.map(({ lookup: [a, b, share] }) => blended(known[a], known[b], share)) };
}

/** A flap that the stick moves is laid on later. */
function airOf(known: readonly SectionAir[], { lookup: [a, b, share], flap }: AirStrip): SectionAir {
  const plain = blended(known[a], known[b], share);
  return flap && !isMoved(flap) && flap.rest !== 0 ? flapped(plain, { chordShare: flap.chordShare, deflection: flap.rest }) : plain;
}

const isMoved = ({ noseUp, noseDown }: StripFlap): boolean => noseUp !== 0 || noseDown !== 0;

/** A strip's section with its flap where the stick has it. */
export function stripAir({ strips }: AirBasis, air: AirAt, strip: number, pitch: number): SectionAir {
  const { flap } = strips[strip];
  if (!flap || !isMoved(flap)) return air.strips[strip];
  const deflection = flap.rest + deflectionAt(flap, pitch);
  return deflection === 0 ? air.strips[strip] : flapped(air.strips[strip], { chordShare: flap.chordShare, deflection });
}

/** The highest lift coefficient of a strip; near the end of a flap the mean of its neighbours where that is more. */
export function liftMaxAt(basis: AirBasis, air: AirAt, strip: number, pitch: number): number {
  const own = ownLiftMax(basis, air, strip, pitch);
  const { faired } = basis.strips[strip];
  if (!faired) return own;
  let mean = 0;
  for (const [other, share] of faired) mean += share * ownLiftMax(basis, air, other, pitch);
  return Math.max(own, mean);
}

/** As of `stripAir`; asked for at every strip of every state that is looked at. */
function ownLiftMax({ strips }: AirBasis, air: AirAt, strip: number, pitch: number): number {
  const { flap } = strips[strip];
  const plain = air.strips[strip];
  if (!flap || !isMoved(flap)) return plain.liftMax;
  const deflection = flap.rest + deflectionAt(flap, pitch);
  return deflection === 0 ? plain.liftMax : plain.liftMax + limitShift(plain.reynolds, { chordShare: flap.chordShare, deflection });
}
