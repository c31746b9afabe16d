import type { Attached } from "./attached";
import { dragCurve } from "./drag-curve";

/**
 * Lift limit of a thin flat plate as a section, about the same from 40,000 to 200,000: 0.7 to 0.8 (F. W. Schmitz, Aerodynamik
 * des Flugmodells, 1942; T. J. Mueller and A. Pelletier, J. Aircraft 37(5), 2000; from memory, medium).
 */
const liftMax = 0.75;

/** Points of the drag curve a side. */
const count = 15;

/**
 * Friction of one side of a plate: laminar (H. Blasius), or with transition at 500,000 (L. Prandtl and H. Schlichting, as
 * in Boundary-Layer Theory; the constant 1700 from memory, high), whichever is more.
 */
export function plateFriction(reynolds: number): number {
  return Math.max(1.328 / Math.sqrt(reynolds), 0.455 / Math.log10(reynolds) ** 2.58 - 1700 / reynolds);
}

/**
 * Handbook values of a thin flat plate. Slope and moment: thin-section theory. Drag without lift: friction of both sides,
 * and the base of a trailing edge that is cut square, 0.135 (t/c)^(4/3) / friction^(1/3) (S. F. Hoerner, Fluid-Dynamic Drag,
 * ch. 3; from memory, medium). With lift the flow parts at the thin nose and its suction is lost, so the force stands
 * upright on the plate: lift × tan of the angle (Hoerner and Borst, Fluid-Dynamic Lift, ch. 2; from memory, high).
 */
export function plateAir(thickness: number, reynolds: number): Attached {
  const friction = 2 * plateFriction(reynolds);
  const none = friction + (0.135 * thickness ** (4 / 3)) / Math.cbrt(friction);
  const slope = 2 * Math.PI;
  const points = Array.from({ length: 2 * count + 1 }, (_, i) => {
    const lift = (liftMax * (i - count)) / count;
    return { lift, drag: none + lift * Math.tan(lift / slope) };
  });
  return { reynolds, zeroLiftAngle: 0, liftSlope: slope, moment: 0, liftMax, curve: dragCurve(points), origin: "plate", doubts: [] };
}
