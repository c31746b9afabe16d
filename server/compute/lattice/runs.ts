import type { Chain } from "./chains";
import { edgeBetween, isLevel, lengthOf, type Edge, type LatticePiece } from "./pieces";
import type { Density } from "./spacing";

/** A stretch of one half of one surface, level or upright throughout, cut into strips as a whole. Lengths run from left to right. */
export interface Run {
  /** Numbers of the pieces, and where each begins along the run. */
  readonly links: readonly { readonly piece: number; readonly from: number; readonly length: number }[];
  readonly pieces: readonly LatticePiece[];
  readonly length: number;
  readonly level: boolean;
  /** Strips per metre of length. */
  readonly density: Density;
}

export function runsOf(pieces: readonly LatticePiece[], chain: Chain, density: Density): Run[] {
  const groups: Chain["links"][number][][] = [];
  for (const link of chain.links) {
    const group = groups[groups.length - 1];
    if (group && goesOn(pieces[group[group.length - 1].piece], pieces[link.piece])) group.push(link);
    else groups.push([link]);
  }
  return groups.map((group) => {
    const forward = group[0].left < group[0].right;
    const start = forward ? group[0].left : group[group.length - 1].left;
    let from = 0;
    const links = (forward ? group : [...group].reverse()).map(({ piece }) => {
      const length = lengthOf(pieces[piece]);
      from += length;
      return { piece, from: from - length, length };
    });
    return {
      links, pieces, length: from, level: isLevel(pieces[links[0].piece]),
      density: (at) => density(forward ? start + at : start - at),
    };
  });
}

/** Parts of one half that keep their sense across belong together. */
function goesOn(a: LatticePiece, b: LatticePiece): boolean {
  const sense = (piece: LatticePiece) => Math.sign(piece.right.y - piece.left.y);
  return a.surface === b.surface && a.side === b.side && isLevel(a) === isLevel(b) && (!isLevel(a) || sense(a) === sense(b));
}

/** The edge at a length along the run, and the piece it is on. */
export function runEdge({ links, pieces }: Run, at: number): { readonly edge: Edge; readonly piece: number } {
  let i = 0;
  while (i < links.length - 1 && links[i + 1].from <= at) i++;
  const { piece, from, length } = links[i];
  return { edge: edgeBetween(pieces[piece], Math.max(0, Math.min(1, (at - from) / length))), piece };
}

/** Least and greatest y. */
export function runExtent({ links, pieces }: Run): readonly [low: number, high: number] {
  const ys = links.flatMap(({ piece }) => [pieces[piece].left.y, pieces[piece].right.y]);
  return [Math.min(...ys), Math.max(...ys)];
}

/** Length along a level run at which it has a y, and length per y there. */
export function lengthAt({ links, pieces }: Run, y: number): { readonly at: number; readonly per: number } {
  const [first, last] = [links[0], links[links.length - 1]];
  const nearer = Math.abs(y - pieces[first.piece].left.y) < Math.abs(y - pieces[last.piece].right.y) ? first : last;
  const found = links.find(({ piece }) => (y - pieces[piece].left.y) * (y - pieces[piece].right.y) <= 0) ?? nearer;
  const { left, right } = pieces[found.piece];
  const per = found.length / (right.y - left.y);
  return { at: found.from + Math.max(0, Math.min(found.length, (y - left.y) * per)), per: Math.abs(per) };
}
