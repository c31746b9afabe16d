import { cutsBetween, type Cuts } from "./cuts";
import type { Edge } from "./pieces";
import { lengthAt, runEdge, runExtent, type Run } from "./runs";
import { meetings } from "./touching";

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

/** Cuts of an upright run, with an edge wherever the end of another piece stands beside it or the wake of another passes through. */
function uprightCuts(run: Run, close: number): Cuts {
  const own = new Set(run.links.map(({ piece }) => piece));
  const least = Math.max(0.02 * run.length, close);
  const marks = run.links.flatMap(({ piece, from, length }) =>
    run.pieces.filter((_, i) => !own.has(i))
      .flatMap((other) => meetings(run.pieces[piece], other))
      .filter(({ distance }) => distance < length / 4)
      .map(({ share }) => from + share * length));
  const ends = [0];
  for (const mark of marks.sort((a, b) => a - b)) if (mark - ends[ends.length - 1] > least && run.length - mark > least) ends.push(mark);
  ends.push(run.length);
  const joints = run.links.slice(1).map(({ from }) => from);
  const between = (from: number, to: number) => joints.filter((at) => at > from + close && at < to - close);
  const cuts = ends.slice(1).map((to, i) => cutsBetween(run.density, ends[i], to, between(ends[i], to)));
  return { edges: [0, ...cuts.flatMap(({ edges }) => edges.slice(1))], middles: cuts.flatMap(({ middles }) => middles) };
}
