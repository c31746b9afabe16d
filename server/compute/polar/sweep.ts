import type { PotentialFlow } from "./flow/potential";
import { solveAt, type Solved } from "./coupled/solve";
import type { Stream } from "./layer/jacobian";

const degree = Math.PI / 180;

/** Angles of a polar lie this far apart, rad. */
const step = degree;

/** Where a sweep starts, rad above the angle of no lift; half way up to where the flow meets the nose evenly if that is higher. */
const fromZeroLift = 4 * degree;

/** No sweep goes farther, rad. */
const farthest = 25 * degree;

/** Lift this much below its highest ends a sweep upwards; lift below the other ends one downwards. */
const fall = 0.06;
const lowest = -0.4;

export interface Sweep {
  /** By rising angle. */
  readonly points: readonly Solved[];
  /** Whether lift was seen to fall at the upper end. */
  readonly stalled: boolean;
  /** Angles within at which the equations were not met. */
  readonly missed: number;
}

/** Waves that break early leave short bubbles; from there the layers are let go to those of the stream, in two steps. */
const early = [3, 6];

/** Solves at angle after angle, each from the one before: up until lift has fallen, down until lift is well negative. */
export function sweep(flow: PotentialFlow, stream: Stream): Sweep {
  const start = startOf(flow, stream);
  if (!start) return { points: [], stalled: false, missed: 0 };
  const up = run(flow, stream, start, 1);
  const down = run(flow, stream, start, -1);
  return { points: [...down.points.reverse(), start, ...up.points], stalled: up.stalled, missed: up.missed + down.missed };
}

function startOf(flow: PotentialFlow, stream: Stream): Solved | undefined {
  const low = inviscidZeroLift(flow) + fromZeroLift;
  const middle = Math.max(low, (low + evenAngle(flow)) / 2);
  for (const offset of [0, 1, -1, 2, -2, 3, -3, 5, -5]) {
    const start = freshAt(flow, step * (Math.round(middle / step) + offset), stream);
    if (start) return start;
  }
  return undefined;
}

/**
 * A solution without a neighbour to start from. The equations may have others, with a laminar layer that separates for
 * good; coming from early transition finds the one whose bubble is closed.
 */
function freshAt(flow: PotentialFlow, angle: number, stream: Stream): Solved | undefined {
  let found: Solved | undefined;
  for (const critical of early.filter((value) => value < stream.critical)) {
    const next = solveAt(flow, angle, { ...stream, critical }, found);
    if (next.met) found = next;
  }
  found = solveAt(flow, angle, stream, found);
  return found.met ? found : undefined;
}

interface Run {
  readonly points: Solved[];
  readonly stalled: boolean;
  readonly missed: number;
}

function run(flow: PotentialFlow, stream: Stream, start: Solved, sign: 1 | -1): Run {
  const points: Solved[] = [];
  let last = start;
  let best = start.lift;
  let failures = 0;
  let missed = 0;
  for (let angle = start.angle + sign * step; Math.abs(angle) < farthest && failures < 3; angle += sign * step) {
    const found = nextAt(flow, angle, stream, last);
    if (!found) {
      failures++;
      continue;
    }
    missed += failures;
    failures = 0;
    points.push(found);
    last = found;
    best = Math.max(best, found.lift);
    if (sign > 0 && found.lift < best - fall) return { points, stalled: true, missed };
    if (sign < 0 && found.lift < lowest) break;
  }
  return { points, stalled: false, missed };
}

/** From the last solution; if that fails by way of half the step, and if that fails afresh. */
function nextAt(flow: PotentialFlow, angle: number, stream: Stream, last: Solved): Solved | undefined {
  const direct = solveAt(flow, angle, stream, last);
  if (direct.met) return direct;
  const half = solveAt(flow, (angle + last.angle) / 2, stream, last);
  const second = half.met ? solveAt(flow, angle, stream, half) : undefined;
  return second?.met ? second : freshAt(flow, angle, stream);
}

function inviscidZeroLift({ level, upright, panels }: PotentialFlow): number {
  let [c, s] = [0, 0];
  for (let i = 0; i < panels.count - 1; i++) {
    c += panels.length[i] * (level[i] + level[i + 1]);
    s += panels.length[i] * (upright[i] + upright[i + 1]);
  }
  return Math.atan2(-c, s);
}

/** The angle at which the flow divides at the node on the nose. */
function evenAngle({ level, upright, panels }: PotentialFlow): number {
  const nose = panels.count >> 1;
  return Math.atan2(-level[nose], upright[nose]);
}
