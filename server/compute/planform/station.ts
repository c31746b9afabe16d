import type { Station, Vec3 } from "../../model/design/geometry";

/** A straight-edged piece between two stations. */
export interface Piece {
  readonly inner: Station;
  readonly outer: Station;
}

/** The station at a share of the way from inner to outer; its section is that of the nearer end. */
export function stationBetween({ inner, outer }: Piece, share: number): Station {
  const mix = (a: number, b: number) => a + share * (b - a);
  const [a, b] = [inner.leadingEdge, outer.leadingEdge];
  return {
    leadingEdge: [mix(a[0], b[0]), mix(a[1], b[1]), mix(a[2], b[2])],
    chord: mix(inner.chord, outer.chord),
    twist: mix(inner.twist, outer.twist),
    section: share < 0.5 ? inner.section : outer.section,
  };
}

/** The same station in another plane y. */
export function stationAt(station: Station, y: number): Station {
  const [x, , z] = station.leadingEdge;
  return { ...station, leadingEdge: [x, y, z] };
}

export const quarterPoint = ({ leadingEdge: [x, y, z], chord }: Station): Vec3 => [x + chord / 4, y, z];
