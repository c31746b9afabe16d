import { edgeBetween, lengthOf, type LatticePiece } from "./pieces";

/** Ends of two surfaces this near each other, as a share of the shorter chord, are meant to meet: a slit would leak as no real one does. */
export const slit = 0.02;

/** Where two pieces come near each other, seen from behind, as shares of the first one's length. */
export interface Meeting {
  readonly share: number;
  /** How far apart they are there, m. */
  readonly distance: number;
}

/** Where the ends of `other` stand beside this piece, and where it passes through. */
export function meetings(own: LatticePiece, other: LatticePiece): Meeting[] {
  return [...standing(own, other), ...crossing(own, other)].filter(({ share }) => share >= 0 && share <= 1);
}

/**
 * Parts pieces where the end of another touches them or another passes through: circulation jumps there, as at a tailplane
 * between twin fins.
 */
export function partWhereTouched(pieces: readonly LatticePiece[]): LatticePiece[] {
  return pieces.flatMap((own) => {
    const length = lengthOf(own);
    const shares = pieces.filter((other) => other !== own).flatMap((other) =>
      meetings(own, other).filter(({ share, distance }) => {
        const { x, chord } = edgeBetween(own, share);
        const near = slit * Math.min(chord, Math.max(other.left.chord, other.right.chord));
        const overlaps = Math.min(other.left.x, other.right.x) <= x + chord &&
          Math.max(other.left.x + other.left.chord, other.right.x + other.right.chord) >= x;
        return overlaps && distance <= near && share * length > near && (1 - share) * length > near;
      }).map(({ share }) => share));
    const cuts = [0];
    for (const share of shares.sort((a, b) => a - b)) if ((share - cuts[cuts.length - 1]) * length > slit * own.left.chord) cuts.push(share);
    return [...cuts.slice(1), 1].map((to, i) => ({ ...own, left: edgeBetween(own, cuts[i]), right: edgeBetween(own, to) }));
  });
}

function standing(own: LatticePiece, other: LatticePiece): Meeting[] {
  const length = lengthOf(own);
  const [ty, tz] = [(own.right.y - own.left.y) / length, (own.right.z - own.left.z) / length];
  return [other.left, other.right].map(({ y, z }) => {
    const [dy, dz] = [y - own.left.y, z - own.left.z];
    return { share: (dy * ty + dz * tz) / length, distance: Math.abs(dy * tz - dz * ty) };
  });
}

function crossing(own: LatticePiece, other: LatticePiece): Meeting[] {
  const [ay, az] = [own.right.y - own.left.y, own.right.z - own.left.z];
  const [by, bz] = [other.right.y - other.left.y, other.right.z - other.left.z];
  const [dy, dz] = [other.left.y - own.left.y, other.left.z - own.left.z];
  const turn = ay * bz - az * by;
  if (Math.abs(turn) < 1e-9 * lengthOf(own) * lengthOf(other)) return [];
  const onOther = (dy * az - dz * ay) / turn;
  return onOther >= 0 && onOther <= 1 ? [{ share: (dy * bz - dz * by) / turn, distance: 0 }] : [];
}
