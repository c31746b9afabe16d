import { reynoldsOf, type Flow } from "../drag/flow";
import { blended } from "../section-air/blended";
import { flapped } from "../section-air/flapped";
import type { SectionAir, SectionsAir } from "../section-air/section-air";
import type { AirBasis } from "./air-basis";
import { deflectionAt } from "./pitch-controls";

/** The sections of an aeroplane at one speed, each at its own Reynolds number. */
export interface AirAt {
  readonly flow: Flow;
  /** Of each strip, its flap in line with it. */
  readonly strips: readonly SectionAir[];
  readonly plates: readonly SectionAir[];
}

/** Undefined where a section isn't known; all are asked for, so that what is missing is wanted at once. */
export function airAt({ strips, plates, lookups }: AirBasis, sections: SectionsAir, flow: Flow): AirAt | undefined {
  const airs = lookups.map(({ section, chord }) => sections(section, reynoldsOf(flow, chord)));
  const known = airs.filter((air) => air !== undefined);
  if (known.length < airs.length) return undefined;
  let before: SectionAir | undefined;
  const made = strips.map(({ lookup: [a, b, share], weight }) => (before = before && weight === 0 ? before : blended(known[a], known[b], share)));
  return { flow, strips: made, plates: plates.map(({ lookup: [a, b, share] }) => blended(known[a], known[b], share)) };
}

/** A strip's section with its flap where the stick has it. */
export function stripAir({ strips }: AirBasis, air: AirAt, strip: number, pitch: number): SectionAir {
  const { flap } = strips[strip];
  if (!flap) return air.strips[strip];
  const deflection = flap.rest + deflectionAt(flap, pitch);
  return deflection === 0 ? air.strips[strip] : flapped(air.strips[strip], { chordShare: flap.chordShare, deflection });
}
