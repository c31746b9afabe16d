import type { Surface } from "../../model/design/geometry";
import { stationAt, stationBetween, type Piece } from "./station";

/** One side of a surface, root to tip. */
export interface Side {
  readonly side: "right" | "left" | "only";
  readonly pieces: readonly Piece[];
}

/** A surface as far as it lies on its own side: where both halves reach over the plane between them they would count twice. */
export interface Sides {
  /** y of the plane between right and left; undefined when there are not two halves. */
  readonly plane?: number;
  readonly sides: readonly Side[];
}

export function sidesOf(surface: Surface): Sides {
  const sides = surface.halves.map(({ side, panels }) => ({ side, pieces: panels.filter(hasSize) }));
  const root = (which: Side["side"]) => sides.find(({ side }) => side === which)?.pieces[0]?.inner.leadingEdge[1];
  const [right, left] = [root("right"), root("left")];
  if (right === undefined || left === undefined) return { sides };
  const plane = (right + left) / 2;
  if (right >= left) return { plane, sides };
  return {
    plane,
    sides: sides.map(({ side, pieces }) => ({ side, pieces: pieces.flatMap((piece) => beyond(piece, plane, side === "right" ? 1 : -1)) })),
  };
}

/** Panels without length or chord have no part in any computation. */
function hasSize({ inner, outer }: Piece): boolean {
  return spanOf({ inner, outer }) > 0 && inner.chord + outer.chord > 0;
}

/** Length along the panel as built, seen from ahead. */
export function spanOf({ inner, outer }: Piece): number {
  return Math.hypot(outer.leadingEdge[1] - inner.leadingEdge[1], outer.leadingEdge[2] - inner.leadingEdge[2]);
}

/** What of a piece lies on one side of the plane y. */
function beyond(piece: Piece, plane: number, sign: 1 | -1): Piece[] {
  const from = sign * (piece.inner.leadingEdge[1] - plane);
  const to = sign * (piece.outer.leadingEdge[1] - plane);
  if (from >= 0 && to >= 0) return [piece];
  if (from <= 0 && to <= 0) return [];
  const cut = stationAt(stationBetween(piece, from / (from - to)), plane);
  return [from < 0 ? { inner: cut, outer: piece.outer } : { inner: piece.inner, outer: cut }];
}
