import { cutsBetween, type Cuts } from "./cuts";
import { lengthAt, runExtent, type Run } from "./runs";
import { accumulate, type Density } from "./spacing";

/** How fast columns may widen beside the end of a surface inside the span of another. */
const growth = 0.5;

/**
 * Cuts y for all level runs together, so that the vortices trailing from one surface pass a later one along the edges of
 * its strips, half a strip from its control points, however near their planes lie.
 */
export function columnsOf(runs: readonly Run[], close: number): Cuts {
  const level = runs.filter((run) => run.level);
  const spans = level.map(runExtent);
  const ends = distinct(runs.flatMap((run) => (run.level ? runExtent(run) : endsOf(run))), close);
  const joints = distinct(level.flatMap(({ links, pieces }) => links.slice(1).map(({ piece }) => pieces[piece].left.y)), close);
  const wanted = level.map(columnsWanted);
  const density: Density = (y) => wanted.reduce((most, of) => Math.max(most, of(y)), 0);
  const edges: number[] = [];
  const middles: number[] = [];
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1], ends[i]];
    if (!spans.some(([low, high]) => low < to - close && high > from + close)) continue;
    const cuts = cutsBetween(density, from, to, joints.filter((y) => y > from + close && y < to - close));
    middles.push(...cuts.middles);
    edges.push(...(edges[edges.length - 1] === from ? cuts.edges.slice(1) : cuts.edges));
  }
  return { edges, middles };
}

const endsOf = ({ links, pieces }: Run): number[] => links.flatMap(({ piece }) => [pieces[piece].left.y, pieces[piece].right.y]);

/** The values by size, those within `close` of the first of them as their middle, so that a mirrored design is cut alike. */
function distinct(values: readonly number[], close: number): number[] {
  const groups: number[][] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    const last = groups[groups.length - 1];
    if (last && value - last[0] <= close) last.push(value);
    else groups.push([value]);
  }
  return groups.map((group) => (group[0] + group[group.length - 1]) / 2);
}

/** Columns per metre of y that a run asks for; beside its ends they grow step by step. */
function columnsWanted(run: Run): Density {
  const [low, high] = runExtent(run);
  const inside: Density = (y) => {
    const { at, per } = lengthAt(run, y);
    return per * run.density(at);
  };
  const { total, place } = accumulate(inside, low, high);
  const first = place(Math.min(1, total)) - low;
  const last = high - place(Math.max(0, total - 1));
  return (y) => {
    if (y < low) return 1 / (first + growth * (low - y));
    return y > high ? 1 / (last + growth * (y - high)) : inside(y);
  };
}
