import { cutsBetween, type Cuts } from "./cuts";
import { lengthOf, type Edge, type LatticePiece } from "./pieces";
import { lengthAt, runEdge, runExtent, type Run } from "./runs";

/** A strip of a surface, one chord deep, with one horseshoe vortex and one control point a row. */
export interface Strip {
  /** The piece on which its middle lies. */
  readonly piece: number;
  readonly left: Edge;
  readonly middle: Edge;
  readonly right: Edge;
}

/** Strips of every run: level ones by the common columns, upright ones by their own density. */
export function stripsOf(runs: readonly Run[], columns: Cuts, close: number): Strip[] {
  return runs.flatMap((run) => {
    const { edges, middles } = run.level ? levelCuts(run, columns, close) : uprightCuts(run, close);
    return middles.map((middle, i): Strip => {
      const { edge, piece } = runEdge(run, middle);
      return { piece, middle: edge, left: runEdge(run, edges[i]).edge, right: runEdge(run, edges[i + 1]).edge };
    });
  });
}

/** Columns as lengths along a run. */
function levelCuts(run: Run, columns: Cuts, close: number): Cuts {
  const [low, high] = runExtent(run);
  const along = (y: number) => lengthAt(run, y).at;
  const edges = columns.edges.filter((y) => y >= low - close && y <= high + close).map(along);
  const middles = columns.middles.filter((y) => y > low && y < high).map(along);
  return edges[0] < edges[edges.length - 1] ? { edges, middles } : { edges: edges.reverse(), middles: middles.reverse() };
}

/** Cuts of an upright run, with an edge wherever the end of another piece stands against it or another passes through. */
function uprightCuts(run: Run, close: number): Cuts {
  const own = new Set(run.links.map(({ piece }) => piece));
  const least = Math.max(0.02 * run.length, close);
  const marks = run.links.flatMap(({ piece, from, length }) =>
    run.pieces.filter((_, i) => !own.has(i))
      .flatMap((other) => [...standing(run.pieces[piece], other), ...crossing(run.pieces[piece], other)])
      .filter((share) => share >= 0 && share <= 1)
      .map((share) => from + share * length));
  const ends = [0];
  for (const mark of marks.sort((a, b) => a - b)) if (mark - ends[ends.length - 1] > least && run.length - mark > least) ends.push(mark);
  ends.push(run.length);
  const joints = run.links.slice(1).map(({ from }) => from);
  const cuts = ends.slice(1).map((to, i) => cutsBetween(run.density, ends[i], to, joints.filter((at) => at > ends[i] + close && at < to - close)));
  return { edges: [0, ...cuts.flatMap(({ edges }) => edges.slice(1))], middles: cuts.flatMap(({ middles }) => middles) };
}

/** Shares of a piece's length where ends of another stand nearer to it than a quarter of its length. */
function standing(own: LatticePiece, other: LatticePiece): number[] {
  const length = lengthOf(own);
  const [ty, tz] = [(own.right.y - own.left.y) / length, (own.right.z - own.left.z) / length];
  return [other.left, other.right].flatMap(({ y, z }) => {
    const [dy, dz] = [y - own.left.y, z - own.left.z];
    return Math.abs(dy * tz - dz * ty) < length / 4 ? [(dy * ty + dz * tz) / length] : [];
  });
}

function crossing(own: LatticePiece, other: LatticePiece): number[] {
  const [ay, az] = [own.right.y - own.left.y, own.right.z - own.left.z];
  const [by, bz] = [other.right.y - other.left.y, other.right.z - other.left.z];
  const [dy, dz] = [other.left.y - own.left.y, other.left.z - own.left.z];
  const turn = ay * bz - az * by;
  if (Math.abs(turn) < 1e-9 * lengthOf(own) * lengthOf(other)) return [];
  const onOther = (dy * az - dz * ay) / turn;
  return onOther >= 0 && onOther <= 1 ? [(dy * bz - dz * by) / turn] : [];
}
