import type { Elements } from "../../server/compute/lattice/elements";

export type Point = readonly [x: number, y: number, z: number];

/** Horseshoes of unit strength from A to B, with or without legs; control points as asked. */
export function horseshoes(lines: readonly (readonly [a: Point, b: Point])[], legs: 0 | 1, points: readonly Point[] = []): Elements {
  const of = (pick: (line: readonly [Point, Point]) => number) => Float64Array.from(lines, pick);
  const at = (i: 0 | 1 | 2) => Float64Array.from(points, (p) => p[i]);
  const all = (value: number) => new Float64Array(lines.length).fill(value);
  return {
    count: lines.length, rows: 1,
    ax: of(([a]) => a[0]), ay: of(([a]) => a[1]), az: of(([a]) => a[2]),
    bx: of(([, b]) => b[0]), by: of(([, b]) => b[1]), bz: of(([, b]) => b[2]),
    legA: all(legs), legB: all(legs),
    px: at(0), py: at(1), pz: at(2), ny: all(0), nz: all(1), slope: all(0),
  };
}
