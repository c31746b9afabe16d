import type { Body, BodyStation, Panel, Vec3 } from "../../model/design/geometry";

/** A convex thing, by its support: the point of it that lies farthest along a direction. */
export type Convex = (direction: Vec3) => Vec3;

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** a + s·b */
export const along = (a: Vec3, s: number, b: Vec3): Vec3 => [a[0] + s * b[0], a[1] + s * b[1], a[2] + s * b[2]];

/** The smallest convex thing around some points. */
export function hull(points: readonly Vec3[]): Convex {
  return (direction) => points.reduce((best, p) => (dot(p, direction) > dot(best, direction) ? p : best));
}

/** The smallest convex thing around two. */
export function around(a: Convex, b: Convex): Convex {
  return (direction) => {
    const [p, q] = [a(direction), b(direction)];
    return dot(p, direction) >= dot(q, direction) ? p : q;
  };
}

/** A flat cylinder: centre, unit axis, radius, length along the axis. */
export function cylinder(centre: Vec3, axis: Vec3, radius: number, length: number): Convex {
  return (direction) => {
    const axial = dot(direction, axis);
    const nearly = along(direction, -axial, axis);
    const across = along(nearly, -dot(nearly, axis), axis); // once more: little is left of a direction close to the axis
    const size = Math.sqrt(dot(across, across));
    const rim = size > 1e-12 * Math.abs(axial) ? along(centre, radius / size, across) : centre;
    return along(rim, (Math.sign(axial) * length) / 2, axis);
  };
}

/** A box around its middle. */
export function box(middle: Vec3, size: Vec3): Convex {
  const side = (i: 0 | 1 | 2, direction: Vec3) => middle[i] + (direction[i] < 0 ? -size[i] : size[i]) / 2;
  return (direction) => [side(0, direction), side(1, direction), side(2, direction)];
}

/** A body's pieces from station to station, each convex: ellipses (`round`, `oval`) or rectangles (`box`) joined straight. */
export function bodyPieces(body: Body): Convex[] {
  const sections = body.stations.map((station) => bodySection(body, station));
  return sections.slice(1).map((section, i) => around(sections[i], section));
}

function bodySection({ nose, shape }: Body, { x, z, width, height }: BodyStation): Convex {
  const middle: Vec3 = [nose[0] + x, nose[1], nose[2] + z];
  if (shape === "box") return box(middle, [0, width, height]);
  return ([, y, up]) => {
    const [a, b] = [width / 2, height / 2];
    const size = Math.hypot(a * y, b * up);
    return size > 0 ? [middle[0], middle[1] + (a * a * y) / size, middle[2] + (b * b * up) / size] : middle;
  };
}

/** A panel as thin as its chords. */
export function thinPanel({ inner, outer }: Panel): Convex {
  const edges = [inner, outer].flatMap(({ leadingEdge, chord, twist }): Vec3[] => [
    leadingEdge,
    along(leadingEdge, chord, [Math.cos(twist), 0, -Math.sin(twist)]),
  ]);
  return hull(edges);
}
