import { lengthOf, type Edge, type LatticePiece } from "./pieces";
import { slit } from "./touching";

/** Where ends of pieces meet. */
export interface Joint {
  /** Numbers of ends: twice the piece's, plus one for its right end. */
  readonly ends: readonly number[];
  /** On the plane of symmetry of a design solved by its right side, so that it meets its image. */
  readonly onPlane: boolean;
}

export interface Joined {
  readonly pieces: readonly LatticePiece[];
  readonly joints: readonly Joint[];
  /** Which of the given pieces these are. */
  readonly kept: readonly number[];
}

/**
 * Finds which ends meet: those at one place, and a lone end with one of another surface that it almost touches. These are
 * brought to one y and z, so that the vortices trailing from them lie on one line. Pieces that shrink to nothing are left
 * out. `close` is what counts as one place, m.
 */
export function joinEnds(pieces: readonly LatticePiece[], symmetric: boolean, close: number): Joined {
  const ends = pieces.flatMap(({ left, right }) => [left, right]);
  const parent = ends.map((_, i) => i);
  const root = (i: number): number => (parent[i] === i ? i : (parent[i] = root(parent[i])));
  const joinIf = (test: (i: number, j: number) => boolean) => {
    for (let i = 0; i < ends.length; i++) {
      for (let j = i + 1; j < ends.length; j++) if (j >> 1 !== i >> 1 && test(i, j)) parent[root(j)] = root(i);
    }
  };
  joinIf((i, j) => meet(ends[i], ends[j], () => close));
  const liesOnPlane = ({ left, right }: LatticePiece) => Math.abs(left.y) <= close && Math.abs(right.y) <= close;
  const sizes = ends.map((_, i) => ends.filter((_, j) => root(j) === root(i)).length);
  // Never so far that a narrow piece would lose itself.
  const reach = (i: number) => lengthOf(pieces[i >> 1]) / 4;
  const sameHalf = (a: LatticePiece, b: LatticePiece) => a.surface === b.surface && a.side === b.side;
  joinIf((i, j) => (sizes[i] === 1 || sizes[j] === 1) && !sameHalf(pieces[i >> 1], pieces[j >> 1]) &&
    meet(ends[i], ends[j], (chord) => Math.min(slit * chord, reach(i), reach(j))));
  const groups = new Map<number, number[]>();
  ends.forEach((_, i) => groups.set(root(i), [...(groups.get(root(i)) ?? []), i]));
  const placed = [...ends];
  const joints = [...groups.values()].map((group): Joint => {
    const alone = group.length === 1 ? Math.min(slit * ends[group[0]].chord, reach(group[0])) : 0;
    const onPlane = symmetric && group.some((i) => Math.abs(ends[i].y) <= Math.max(close, alone) && !liesOnPlane(pieces[i >> 1]));
    const mean = (of: (edge: Edge) => number) => group.reduce((sum, i) => sum + of(ends[i]), 0) / group.length;
    const y = onPlane || (symmetric && group.some((i) => liesOnPlane(pieces[i >> 1]))) ? 0 : mean((edge) => edge.y);
    const z = mean((edge) => edge.z);
    for (const i of group) placed[i] = { ...ends[i], y, z };
    return { ends: group, onPlane };
  });
  const moved = pieces.map((piece, i) => ({ ...piece, left: placed[2 * i], right: placed[2 * i + 1] }));
  return withoutEmpty(moved, joints);
}

function meet(a: Edge, b: Edge, within: (chord: number) => number): boolean {
  const near = within(Math.min(a.chord, b.chord));
  return Math.abs(a.y - b.y) <= near && Math.abs(a.z - b.z) <= near && a.x <= b.x + b.chord && b.x <= a.x + a.chord;
}

function withoutEmpty(pieces: readonly LatticePiece[], joints: readonly Joint[]): Joined {
  const place = new Map<number, number>();
  pieces.forEach((piece, i) => {
    if (lengthOf(piece) > 0) place.set(i, place.size);
  });
  return {
    kept: [...place.keys()],
    pieces: pieces.filter((_, i) => place.has(i)),
    joints: joints
      .map(({ ends, onPlane }) => ({
        onPlane,
        ends: ends.flatMap((end) => (place.has(end >> 1) ? [2 * place.get(end >> 1)! + (end & 1)] : [])),
      }))
      .filter(({ ends }) => ends.length > 0),
  };
}
