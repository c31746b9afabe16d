import type { Body } from "../../model/design/geometry";
import { bodyMomentSlope } from "../stability/body-moment";

/**
 * Yawing moment of a body over dynamic pressure per radian of sideslip, m³, negative as it turns the nose away from the
 * wind: Munk's (NACA Report 184, 1924) in free flow, by the body's height as seen from the side.
 */
export function bodyYawSlope(body: Body): number {
  const onEdge: Body = { ...body, stations: body.stations.map((station) => ({ ...station, width: station.height, height: station.width })) };
  return -bodyMomentSlope(onEdge);
}
