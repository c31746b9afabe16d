import type { LatticeSolution } from "../lattice/solve-lattice";
import type { ReferenceGeometry } from "../planform/reference-geometry";

/** Coefficients of lift and of the pitching moment about the balance point, nose up, on area and mean chord. */
export interface PitchRate {
  /** Per qc̄/2V: the whole turning nose up about its balance point. */
  readonly lift: number;
  readonly moment: number;
  /** Per α̇c̄/2V: the tail meets the downwash of a moment ago. Zero without a tailplane. */
  readonly lagLift: number;
  readonly lagMoment: number;
}

/**
 * Pitch damping of all surfaces, from the lattice in the curved flow of a steady turn nose up; and the lag of the downwash as
 * in R. C. Nelson, Flight Stability and Automatic Control, 1998, table 3.3: the tailplanes' incidence grows by downwash
 * slope × α̇ × distance behind the wing's quarter chord over speed.
 */
export function pitchRate(lattice: LatticeSolution, { area, meanChord, meanChordX }: ReferenceGeometry, cgX: number): PitchRate {
  const rate = 2 / meanChord;
  const turning = lattice.respond(({ point: [x], normal: [, nz] }) => -nz * rate * (x - cgX));
  const quarter = meanChordX + meanChord / 4;
  const downwash = lattice.downwashSlope ?? 0;
  const lag = lattice.respond(({ kind, point: [x], normal: [, nz] }) => (kind === "tailplane" ? -nz * rate * downwash * (x - quarter) : 0));
  const moment = (of: typeof turning) => (of.moment + (cgX - lattice.about) * of.lift) / (area * meanChord);
  return { lift: turning.lift / area, moment: moment(turning), lagLift: lag.lift / area, lagMoment: moment(lag) };
}
