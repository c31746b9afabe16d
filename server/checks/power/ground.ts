import type { Vec3 } from "../../model/design/geometry";

/** A plane the aircraft stands on: a point of it and the unit normal up. */
export interface Ground {
  readonly point: Vec3;
  readonly up: Vec3;
  /** Is it the attitude with the tail up? */
  readonly tailUp: boolean;
}

/**
 * The grounds a propeller must clear, from the places where wheels and skids touch: as it stands, on the two lowest
 * places that hold the balance point between them; and, with a tail wheel or skid, with the tail up and the x axis level,
 * as in the take-off run (14 CFR 23.925: level attitude for tail wheels).
 */
export function grounds(contacts: readonly Vec3[], balance: number): Ground[] {
  if (contacts.length === 0) return [];
  const edge = lowestEdge(contacts.map(([x, , z]) => [x, z] as const), balance);
  const [[x0, z0], [x1, z1]] = edge;
  const rise = x1 > x0 ? Math.atan2(z1 - z0, x1 - x0) : 0;
  const standing: Ground = { point: [x0, 0, z0], up: [-Math.sin(rise), 0, Math.cos(rise)], tailUp: false };
  // Of a tail dragger the wheels ahead carry most of the weight; of a tricycle those behind.
  if (!(z1 > z0 && x1 - balance > balance - x0)) return [standing];
  return [standing, { point: [x0, 0, z0], up: [0, 0, 1], tailUp: true }];
}

type Point = readonly [x: number, z: number];

/** The edge of the lower hull of points that spans x, or the nearest one; twice the same point where all are at one x. */
function lowestEdge(points: readonly Point[], x: number): readonly [Point, Point] {
  const lowest: Point[] = [];
  for (const point of [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    if (lowest.at(-1)?.[0] === point[0]) continue;
    while (lowest.length > 1 && below(lowest[lowest.length - 2], lowest[lowest.length - 1], point)) lowest.pop();
    lowest.push(point);
  }
  const i = lowest.findIndex((point) => point[0] >= x);
  const right = i < 0 ? lowest.length - 1 : Math.max(i, Math.min(1, lowest.length - 1));
  return [lowest[Math.max(0, right - 1)], lowest[right]];
}

/** Does the straight line from a to c pass under b? */
const below = (a: Point, b: Point, c: Point): boolean => (b[1] - a[1]) * (c[0] - a[0]) >= (c[1] - a[1]) * (b[0] - a[0]);
