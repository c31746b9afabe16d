import { pressureForces } from "./flow/forces";
import { speedsAt, type PotentialFlow } from "./flow/potential";
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
  readonly points: readonly Found[];
  /** Whether lift was seen to fall at the upper end. */
  readonly stalled: boolean;
  readonly symmetric: boolean;
}

/** A solution; `eased` if it was only found with waves that break earlier than in the stream asked for. */
export interface Found extends Solved {
  readonly eased: boolean;
}

/** Amplitudes by which a solution is led up to that of the stream, as shares of it. */
const ladder = [1 / 3, 1 / 2, 2 / 3, 5 / 6];

/** Of these the first so many are tried without a solution to start from. */
const bare = 2;

/** A start that keeps less than this of the lift of potential flow may be one of the other solutions. */
const attached = 0.8;

/** Lift this far from where the last two angles point to may be another branch of solutions: others are then tried. */
const sudden = 0.06;

/** No solution farther off than this is taken. */
const jump = 0.5;

/**
 * Solves at angle after angle, each from the one before: up until lift has fallen, down until lift is well negative. Yields
 * every few milliseconds, so that a host can turn to other things or drop it.
 */
export function* sweep(flow: PotentialFlow, stream: Stream): Generator<void, Sweep> {
  const start = yield* startOf(flow, stream);
  const symmetric = isSymmetric(flow);
  if (!start) return { points: [], stalled: false, symmetric };
  const up = yield* run(flow, stream, start, 1);
  if (symmetric) {
    const above = [...(yield* run(flow, stream, start, -1, step / 2)).points.reverse(), start, ...up.points];
    return { points: [...above.map(mirrored).reverse().filter(({ lift }) => lift > lowest), ...above], stalled: up.stalled, symmetric };
  }
  const down = yield* run(flow, stream, start, -1);
  return { points: [...down.points.reverse(), start, ...up.points], stalled: up.stalled, symmetric };
}

const isSymmetric = ({ panels: { y, count } }: PotentialFlow): boolean => y.every((value, i) => Math.abs(value + y[count - 1 - i]) < 1e-4);

const mirrored = (found: Found): Found => ({ ...found, angle: -found.angle, lift: -found.lift, moment: -found.moment });

function* startOf(flow: PotentialFlow, stream: Stream): Generator<void, Found | undefined> {
  const low = inviscidZeroLift(flow) + fromZeroLift;
  const middle = Math.max(low, (low + evenAngle(flow)) / 2);
  const found: Found[] = [];
  for (const offset of [0, 1, -1, 2, -2, 3, -3]) {
    const start = yield* freshAt(flow, step * (Math.round(middle / step) + offset), stream);
    if (!start) continue;
    if (!start.eased && attachment(flow, start) > attached) return start;
    found.push(start);
  }
  return found.sort((a, b) => attachment(flow, b) - attachment(flow, a))[0];
}

/** Lift over that of potential flow. */
const attachment = (flow: PotentialFlow, { angle, lift }: Found): number => lift / pressureForces(flow.panels, speedsAt(flow, angle), angle).lift;

/**
 * A solution without a neighbour to start from. The equations may have others, with a laminar layer that separates for
 * good; coming from early transition finds the one whose bubble is closed. Where it can't be led all the way, the last.
 */
function* freshAt(flow: PotentialFlow, angle: number, stream: Stream): Generator<void, Found | undefined> {
  let found: Solved | undefined;
  for (const [rung, share] of ladder.entries()) {
    if (!found && rung === bare) return undefined;
    const next = yield* solveAt(flow, angle, { ...stream, critical: share * stream.critical }, found);
    if (next.met) found = next;
    else if (found) break;
  }
  if (!found) return undefined;
  const last = yield* solveAt(flow, angle, stream, found);
  return last.met ? { ...last, eased: false } : { ...found, eased: true };
}

interface Run {
  readonly points: Found[];
  readonly stalled: boolean;
}

/** From a start upwards or downwards, not below the angle `least`. */
function* run(flow: PotentialFlow, stream: Stream, start: Found, sign: 1 | -1, least = -farthest): Generator<void, Run> {
  const points: Found[] = [];
  let [last, slope] = [start, 2 * Math.PI];
  let best = start.lift;
  let failures = 0;
  for (let angle = start.angle + sign * step; angle > least && angle < farthest && failures < 3; angle += sign * step) {
    const found = yield* nextAt(flow, angle, stream, last, last.lift + slope * (angle - last.angle));
    if (!found) {
      failures++;
      continue;
    }
    failures = 0;
    slope = (found.lift - last.lift) / (angle - last.angle);
    points.push(found);
    last = found;
    best = Math.max(best, found.lift);
    if (sign > 0 && found.lift < best - fall) return { points, stalled: true };
    if (sign < 0 && found.lift < lowest) break;
  }
  return { points, stalled: false };
}

/**
 * From the last solution; if that fails or jumps away from the lift awaited, by way of half the step, afresh, or with waves
 * that break earlier. Of those that jump the nearest that goes on from the last; then an eased one that does not jump, before
 * one begun afresh, which may be another of the solutions.
 */
function* nextAt(flow: PotentialFlow, angle: number, stream: Stream, last: Found, awaited: number): Generator<void, Found | undefined> {
  const off = ({ lift }: Found) => Math.abs(lift - awaited);
  const near = (found: Found | undefined): boolean => found !== undefined && !found.eased && off(found) < sudden;
  const first = yield* direct(flow, angle, stream, last);
  if (near(first)) return first;
  const half = yield* solveAt(flow, (angle + last.angle) / 2, stream, last);
  const second = half.met ? yield* direct(flow, angle, stream, half) : undefined;
  if (near(second)) return second;
  const onwards = nearest([first, second], off);
  const fresh = yield* freshAt(flow, angle, stream);
  if (near(fresh)) return fresh;
  if (onwards) return onwards;
  const breaking = yield* solveAt(flow, angle, { ...stream, critical: ladder[ladder.length - 1] * stream.critical }, last);
  const eased = [breaking.met ? { ...breaking, eased: true } : undefined, fresh?.eased ? fresh : undefined];
  return nearest(eased.filter((found) => found && off(found) < sudden), off) ?? nearest([fresh?.eased ? undefined : fresh], off) ?? nearest(eased, off);
}

function nearest(all: readonly (Found | undefined)[], off: (found: Found) => number): Found | undefined {
  const [first, ...rest] = all.filter((found) => found !== undefined && off(found) <= jump) as Found[];
  return rest.reduce((best, found) => (off(found) < off(best) ? found : best), first);
}

function* direct(flow: PotentialFlow, angle: number, stream: Stream, start: Solved): Generator<void, Found | undefined> {
  const solved = yield* solveAt(flow, angle, stream, start);
  return solved.met ? { ...solved, eased: false } : undefined;
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
