import type { Body, Station, Surface } from "../../model/design/geometry";
import { fillOf, gapOf } from "../planform/gap";
import { sidesOf, spanOf, type Side } from "../planform/sides";
import { stationBetween, type Piece } from "../planform/station";
import { camberSlopes } from "./camber";

/** One end of a straight piece of lifting surface: leading edge, chord, nose-up angle, mean-line slopes at the control points. */
export interface Edge {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly chord: number;
  readonly twist: number;
  readonly slopes: Float64Array;
  /** Share of the half as built, 0 at its root and 1 at its tip; less than 0 between the roots. */
  readonly along: number;
}

/** A straight piece, seen from behind from left to right, so that its normal points up; an upright one from root to tip as on the right side. */
export interface LatticePiece {
  readonly surface: number;
  readonly side: Side["side"];
  readonly left: Edge;
  readonly right: Edge;
}

/** All pieces of all surfaces, gaps closed where they carry through, none reaching over the plane of symmetry. */
export function latticePieces(surfaces: readonly Surface[], bodies: readonly Body[], rows: number): LatticePiece[] {
  const slopes = slopesByShape(rows);
  const edge = (station: Station, along: number): Edge => {
    const [x, y, z] = station.leadingEdge;
    return { x, y, z, chord: station.chord, twist: station.twist, slopes: slopes(station.section), along };
  };
  return surfaces.flatMap((surface, index) => {
    const gap = gapOf(surface, surfaces, bodies);
    const fills = gap?.carried ? fillOf(gap) : undefined;
    return sidesOf(surface).sides.flatMap(({ side, pieces }) => {
      const all = (fills && side !== "only" ? [fills[side], ...pieces] : pieces).flatMap(splitAtPlane);
      const turned = all.length > 0 && runsLeft(side, all);
      const ends = sharesAlong(all, surface.halves.find((half) => half.side === side)?.panels ?? pieces);
      return all.map(({ inner, outer }, i): LatticePiece => {
        const [root, tip] = [edge(inner, ends[i]), edge(outer, ends[i + 1])];
        return turned ? { surface: index, side, left: tip, right: root } : { surface: index, side, left: root, right: tip };
      });
    });
  });
}

/** Where the pieces of a half begin and end along it. They end at its tip; what lies before its root is between the roots. */
function sharesAlong(pieces: readonly Piece[], half: readonly Piece[]): number[] {
  const length = half.reduce((sum, piece) => sum + spanOf(piece), 0);
  const shares = [1];
  for (const piece of [...pieces].reverse()) shares.unshift(shares[0] - spanOf(piece) / length);
  return shares;
}

function slopesByShape(rows: number): (section: Station["section"]) => Float64Array {
  const known = new Map<unknown, Float64Array>();
  return (section) => {
    let found = known.get(section);
    if (!found) known.set(section, (found = camberSlopes(section, rows)));
    return found;
  };
}

function splitAtPlane(piece: Piece): Piece[] {
  const [from, to] = [piece.inner.leadingEdge[1], piece.outer.leadingEdge[1]];
  if (from * to >= 0) return [piece];
  const { leadingEdge: [x, , z], ...rest } = stationBetween(piece, from / (from - to));
  const middle: Station = { ...rest, leadingEdge: [x, 0, z] };
  return [{ inner: piece.inner, outer: middle }, { inner: middle, outer: piece.outer }];
}

/** Does a half go from right to left, root to tip? One straight up counts as its side, or where it stands. */
function runsLeft(side: Side["side"], pieces: readonly Piece[]): boolean {
  const [root, tip] = [pieces[0].inner.leadingEdge, pieces[pieces.length - 1].outer.leadingEdge];
  const across = tip[1] - root[1];
  if (Math.abs(across) > 0.02 * Math.abs(tip[2] - root[2])) return across < 0;
  return side === "left" || (side === "only" && root[1] < 0);
}

/** The edge at a share of the way from left to right. */
export function edgeBetween({ left, right }: Pick<LatticePiece, "left" | "right">, share: number): Edge {
  const mix = (a: number, b: number) => a + share * (b - a);
  return {
    x: mix(left.x, right.x),
    y: mix(left.y, right.y),
    z: mix(left.z, right.z),
    chord: mix(left.chord, right.chord),
    twist: mix(left.twist, right.twist),
    along: mix(left.along, right.along),
    slopes: left.slopes === right.slopes ? left.slopes : left.slopes.map((slope, k) => mix(slope, right.slopes[k])),
  };
}

export const lengthOf = ({ left, right }: Pick<LatticePiece, "left" | "right">): number => Math.hypot(right.y - left.y, right.z - left.z);

/** Level enough to share its strips with all others over the same y: within 60° of the horizontal. */
export const isLevel = (piece: LatticePiece): boolean => Math.abs(piece.right.y - piece.left.y) >= lengthOf(piece) / 2;
