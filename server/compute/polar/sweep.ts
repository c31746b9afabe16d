import type { PotentialFlow } from "./flow/potential";
import { solveAt, type Solved } from "./coupled/solve";
import type { Stream } from "./layer/jacobian";

const degree = Math.PI / 180;

/** Angles of a polar lie this far apart, rad. */
const step = degree;

/** The angle a sweep starts from, rad, above that of no lift: there both sides are attached. */
const fromZeroLift = 4 * degree;

export interface Sweep {
  /** By rising angle. */
  readonly points: readonly Solved[];
  /** Whether lift was seen to fall at the upper end. */
  readonly stalled: boolean;
}

/** Solves at angle after angle, each from the one before: up until lift has fallen, down until lift is well negative. */
export function sweep(flow: PotentialFlow, stream: Stream): Sweep {
  const zeroLift = inviscidZeroLift(flow);
  let start: Solved | undefined;
  for (const offset of [0, -1, 1, -2, 2, -3, 3]) {
    const angle = degree * Math.round((zeroLift + fromZeroLift) / degree + offset);
    const found = solveAt(flow, angle, stream);
    if (!found.converged) continue;
    start = found;
    break;
  }
  if (!start) return { points: [], stalled: false };
  const up = run(flow, stream, start, 1);
  const down = run(flow, stream, start, -1);
  const points = [...[...down.points].reverse(), start, ...up.points];
  return { points, stalled: up.stalled };
}

function run(flow: PotentialFlow, stream: Stream, start: Solved, sign: 1 | -1): { points: Solved[]; stalled: boolean } {
  const points: Solved[] = [];
  let last = start;
  let best = start.lift;
  let angle = start.angle;
  let failures = 0;
  while (Math.abs(angle) < 25 * degree) {
    angle += sign * step;
    let found = solveAt(flow, angle, stream, last);
    if (!found.converged) {
      const half = solveAt(flow, angle - (sign * step) / 2, stream, last);
      if (half.converged) found = solveAt(flow, angle, stream, half);
    }
    if (!found.converged) {
      if (++failures > 2) break;
      continue;
    }
    failures = 0;
    points.push(found);
    last = found;
    if (sign > 0) {
      best = Math.max(best, found.lift);
      if (found.lift < best - 0.06) return { points, stalled: true };
    } else if (found.lift < -0.4) break;
  }
  return { points, stalled: false };
}

function inviscidZeroLift({ level, upright, panels }: PotentialFlow): number {
  let [c, s] = [0, 0];
  for (let i = 0; i < panels.count - 1; i++) {
    c += panels.length[i] * (level[i] + level[i + 1]);
    s += panels.length[i] * (upright[i] + upright[i + 1]);
  }
  return Math.atan2(-c, s);
}
