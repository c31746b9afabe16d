import type { Section } from "../../model/design/geometry";
import type { Polar } from "../polar/polar";
import type { Attached } from "./attached";
import { dragCurve } from "./drag-curve";

/**
 * Lift slopes of sections as measured at 60,000, where they differ most, by 2π (M. S. Selig and others, Summary of Low-Speed
 * Airfoil Data, 1995 to 1998: 4.8 to 7.7 per radian, most below 7.2). A bubble that comes or goes within the few degrees that a
 * slope is taken over makes it steeper or flatter than the section is on the whole, so it is held to this.
 */
const [flattest, steepest] = [0.75, 1.15];

export const heldSlope = (slope: number): number => 2 * Math.PI * Math.min(steepest, Math.max(flattest, slope / (2 * Math.PI)));

export function attachedOf(polar: Polar): Attached {
  const { reynolds, zeroLiftAngle, liftSlope, moment, liftMax, points, doubts } = polar;
  return { reynolds, zeroLiftAngle, liftSlope: heldSlope(liftSlope), moment, liftMax, curve: dragCurve(points), origin: "computed", doubts };
}

/** With what the designer wrote in the `foil` block; drag then stands at the same shares of the lift limit as before. */
export function overridden(above: Attached, { liftMax, zeroLiftAngle, moment }: Section): Attached {
  const written = { ...above, zeroLiftAngle: zeroLiftAngle ?? above.zeroLiftAngle, moment: moment ?? above.moment };
  if (liftMax === undefined) return written;
  const { least, most, drag } = above.curve;
  const curve = { least, most: liftMax, drag: (lift: number) => drag(lift > 0 ? (lift * most) / liftMax : lift) };
  return { ...written, liftMax, curve, doubts: above.doubts.filter((doubt) => doubt !== "no_stall" && doubt !== "high_camber") };
}
