import type { Vec3 } from "../../model/design/geometry";
import type { Powerplant, Propeller } from "../../model/design/power";
import { convexDistance } from "../convex/distance";
import { along, cylinder, dot, minus, type Convex } from "../convex/shapes";
import { bladeOf } from "./blade";

/** The space a propeller sweeps: a flat cylinder around its hub. m; `axis` is a unit vector along the shaft. */
export interface Disc {
  readonly hub: Vec3;
  readonly axis: Vec3;
  readonly radius: number;
  /** Along the axis. */
  readonly depth: number;
}

/** The disc of a powerplant; undefined without a propeller. */
export function discOf({ hub, thrustAxis, propeller }: Powerplant): Disc | undefined {
  if (!propeller || !(propeller.diameter > 0)) return undefined;
  return { hub, axis: thrustAxis, radius: propeller.diameter / 2, depth: bladeDepth(propeller) };
}

/** How deep the blades reach along the shaft: the greatest of chord × sine of its angle. */
export function bladeDepth(propeller: Propeller): number {
  return Math.max(...bladeOf(propeller).elements.map(({ chord, angle }) => chord * Math.abs(Math.sin(angle))));
}

/** From a disc to any convex thing; 0 where it strikes. */
export function discClearance(disc: Disc, thing: Convex): number {
  return convexDistance(cylinder(disc.hub, disc.axis, disc.radius, disc.depth), thing);
}

/**
 * Between two discs. Where they pass each other along the shaft it is the gap between their tips seen along it, negative
 * by as much as they overlap; else the distance between them.
 */
export function discGap(a: Disc, b: Disc): number {
  const distance = discClearance(a, cylinder(b.hub, b.axis, b.radius, b.depth));
  if (distance > 0) return distance;
  const line = meanAxis(a.axis, b.axis);
  const between = minus(b.hub, a.hub);
  const across = along(between, -dot(between, line), line);
  return Math.min(0, Math.sqrt(dot(across, across)) - a.radius - b.radius);
}

/** Height of a disc's lowest point over a plane through `point` with the unit normal `up`; negative below it. */
export function discAbove(disc: Disc, point: Vec3, up: Vec3): number {
  const tilt = Math.min(1, Math.abs(dot(disc.axis, up)));
  return dot(minus(disc.hub, point), up) - disc.radius * Math.sqrt(1 - tilt ** 2) - (disc.depth / 2) * tilt;
}

function meanAxis(a: Vec3, b: Vec3): Vec3 {
  const sum = along(a, dot(a, b) < 0 ? -1 : 1, b);
  const size = Math.sqrt(dot(sum, sum));
  return [sum[0] / size, sum[1] / size, sum[2] / size];
}
