import type { Section } from "../../model/design/geometry";
import type { PolarDoubt } from "../polar/polar";

/** What a section does at one Reynolds number. Angles in rad to its chord, moment about the quarter chord, nose up. */
export interface SectionAir {
  readonly reynolds: number;
  readonly zeroLiftAngle: number;
  /** Per radian. */
  readonly liftSlope: number;
  readonly moment: number;
  /** The highest lift coefficient, and the lowest: negative, where it stalls pushing down. */
  readonly liftMax: number;
  readonly liftMin: number;
  /** Drag coefficient at a lift coefficient; finite for any, and rising past the limits. */
  readonly drag: (lift: number) => number;
  /** Where most of it comes from: a measured table, the computed polar, or handbook values of a thin plate. */
  readonly origin: "measured" | "computed" | "plate";
  readonly doubts: readonly PolarDoubt[];
  /**
   * Whether `liftMin`, or a drag asked for at so low a lift, was an estimate because the polar of the section upside down is
   * pending: it is wanted now, and what rests on it is to be asked for again. Such values are worked out when they are read,
   * so take them by name, not by spreading the object or taking `drag` off it.
   */
  readonly provisional?: boolean;
}

/** Undefined where it can't be known, or is not known yet: a polar that is still to be worked out. */
export type SectionsAir = (section: Section, reynolds: number) => SectionAir | undefined;
