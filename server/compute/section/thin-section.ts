import type { MeanLine } from "./mean-line";

/** What thin-section theory says of a mean line; angles in radians to its chord line, slope 2π per radian. */
export interface ThinSection {
  readonly zeroLiftAngle: number;
  /** Moment coefficient about the quarter chord, nose up. */
  readonly moment: number;
  /** Angle at which the flow meets the nose smoothly. */
  readonly idealAngle: number;
  readonly idealLift: number;
}

/** Intervals of the integration; with 400 the NACA mean lines are right to 0.05 %. */
const count = 400;

/**
 * Thin-section theory (H. Glauert, Elements of Aerofoil and Airscrew Theory, ch. VII) by integration over the heights of
 * the mean line, x = (1 − cos θ)/2: no slopes are needed, so digitised coordinates do as well as a formula.
 */
export function thinSection(line: MeanLine): ThinSection {
  let zeroLift = 0;
  let moment = 0;
  let ideal = 0;
  let below = line.height(0);
  for (let k = 0; k < count; k++) {
    const above = line.height((1 - Math.cos((Math.PI * (k + 1)) / count)) / 2);
    const theta = (Math.PI * (k + 0.5)) / count;
    const rise = (above - below) / Math.sin(theta);
    zeroLift += rise * (1 - Math.cos(theta));
    moment += rise * (Math.cos(theta) - Math.cos(2 * theta));
    ideal += rise;
    below = above;
  }
  const zeroLiftAngle = (2 / Math.PI) * zeroLift;
  const idealAngle = (2 / Math.PI) * ideal;
  return { zeroLiftAngle, moment: -moment, idealAngle, idealLift: 2 * Math.PI * (idealAngle - zeroLiftAngle) };
}
