import type { Joint } from "./joints";
import { lengthOf, type LatticePiece } from "./pieces";

/** Pieces joined end to end, such as a half wing with its winglet, measured along their length. */
export interface Chain {
  readonly links: readonly Link[];
  readonly length: number;
  /** Do the first and last end stand free, or meet the plane of symmetry or a corner of several pieces? */
  readonly free: readonly [boolean, boolean];
  /** Inner joints: distance along, and how much of a kink in plan (0 none, 1 strong). */
  readonly kinks: readonly { readonly at: number; readonly strength: number }[];
}

export interface Link {
  readonly piece: number;
  /** Distance along the chain at which the piece's left and right end lie. */
  readonly left: number;
  readonly right: number;
}

export function chainsOf(pieces: readonly LatticePiece[], joints: readonly Joint[]): Chain[] {
  const jointOf = new Map<number, Joint>();
  for (const joint of joints) for (const end of joint.ends) jointOf.set(end, joint);
  const passes = (joint: Joint) => joint.ends.length === 2 && !joint.onPlane;
  const used = new Set<number>();
  const chains: Chain[] = [];
  const startAt = (first: number) => {
    if (used.has(first >> 1)) return;
    const ends: number[] = [];
    let end: number | undefined = first;
    while (end !== undefined && !used.has(end >> 1)) {
      used.add(end >> 1);
      ends.push(end);
      const far: Joint = jointOf.get(end ^ 1)!;
      const near: number = end;
      end = passes(far) ? far.ends.find((other) => other !== (near ^ 1)) : undefined;
    }
    const isFree = (joint: Joint) => joint.ends.length === 1 && !joint.onPlane;
    chains.push(chain(pieces, ends, [isFree(jointOf.get(ends[0])!), isFree(jointOf.get(ends[ends.length - 1] ^ 1)!)]));
  };
  for (const joint of joints) if (!passes(joint)) joint.ends.forEach(startAt);
  // What is left are closed rings.
  pieces.forEach((_, i) => startAt(2 * i));
  return chains;
}

/** From the ends at which each piece is entered. */
function chain(pieces: readonly LatticePiece[], entries: readonly number[], free: readonly [boolean, boolean]): Chain {
  const links: Link[] = [];
  const kinks: { at: number; strength: number }[] = [];
  let at = 0;
  let before: number | undefined;
  for (const entry of entries) {
    const piece = pieces[entry >> 1];
    const length = lengthOf(piece);
    const forward = (entry & 1) === 0;
    links.push({ piece: entry >> 1, left: forward ? at : at + length, right: forward ? at + length : at });
    const quarter = ({ x, chord }: LatticePiece["left"]) => x + chord / 4;
    const slope = ((quarter(piece.right) - quarter(piece.left)) / length) * (forward ? 1 : -1);
    if (before !== undefined) kinks.push({ at, strength: Math.min(1, 2 * Math.abs(slope - before)) });
    before = slope;
    at += length;
  }
  return { links, length: at, free, kinks };
}
