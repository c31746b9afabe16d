import type { Body, Surface, Vec3 } from "../../model/design/geometry";
import { bodyMomentSlope } from "../stability/body-moment";
import { coveredBy } from "../stability/covered";
import { axisHeight } from "../stability/neutral-point";

/**
 * Nose-up moment of a body over dynamic pressure, m³, in a flow whose angle along its axis is given (rad, up positive): as for the
 * neutral point, by Munk and Multhopp.
 */
export function bodySlope(body: Body, surfaces: readonly Surface[], bodies: readonly Body[]): (angle: (at: Vec3) => number) => number {
  const covered = coveredBy(body, surfaces, bodies);
  const [, y, z] = body.nose;
  return (angle) => bodyMomentSlope(body, (x) => angle([x, y, z + axisHeight(body, x)]), covered);
}
