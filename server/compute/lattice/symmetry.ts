import type { Edge, LatticePiece } from "./pieces";

/** The pieces to solve, and the side they stand for. */
export interface Solved {
  readonly symmetric: boolean;
  readonly pieces: readonly LatticePiece[];
  /** Beside each piece its image in y = 0, when the design is symmetric. */
  readonly images: readonly LatticePiece[];
  /** Pieces in the plane of symmetry, which neither feel nor cause anything in symmetric flow. */
  readonly leftOut: readonly LatticePiece[];
}

/** The right side alone if every piece has its image in y = 0, else everything. */
export function solvedPieces(pieces: readonly LatticePiece[], size: number, whole: boolean): Solved {
  const close = 1e-6 * size;
  const onPlane = (piece: LatticePiece) => Math.abs(piece.left.y) <= close && Math.abs(piece.right.y) <= close;
  const everything: Solved = { symmetric: false, pieces, images: [], leftOut: [] };
  if (whole) return everything;
  const leftOut = pieces.filter(onPlane);
  const right = pieces.filter((piece) => !onPlane(piece) && piece.left.y + piece.right.y > 0);
  const left = pieces.filter((piece) => !onPlane(piece) && piece.left.y + piece.right.y < 0);
  if (right.length !== left.length) return everything;
  const images: LatticePiece[] = [];
  for (const piece of right) {
    const found = left.findIndex((other) => mirrors(piece.left, other.right, close) && mirrors(piece.right, other.left, close));
    if (found < 0) return everything;
    images.push(left.splice(found, 1)[0]);
  }
  return { symmetric: true, pieces: right, images, leftOut };
}

function mirrors(a: Edge, b: Edge, close: number): boolean {
  const near = (p: number, q: number) => Math.abs(p - q) <= close;
  return near(a.x, b.x) && near(a.y, -b.y) && near(a.z, b.z) && near(a.chord, b.chord) &&
    Math.abs(a.twist - b.twist) <= 1e-6 && a.slopes.every((slope, k) => Math.abs(slope - b.slopes[k]) <= 1e-6);
}
