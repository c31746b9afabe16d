import { pressureForces } from "../flow/forces";
import { speedsAt, type PotentialFlow } from "../flow/potential";
import { wakeFlow, type WakeFlow } from "../flow/wake";
import type { Stream } from "../layer/jacobian";
import { thwaitesIntegral, thwaitesShape, thwaitesTheta } from "../layer/thwaites";
import { transitionShare } from "../layer/transition";
import { stagnationShape, stagnationThickness } from "../layer/laminar";
import { fill, leastShape, station } from "../layer/station";
import { stressAtTransition } from "../layer/turbulent";
import { influence, type Influence } from "./influence";
import { course, type Course, type Layers } from "./layers";
import { guess, march } from "./march";
import { newtonStep, type Change } from "./newton";

export interface Solved {
  readonly angle: number;
  readonly below: number;
  readonly layers: Layers;
  readonly lift: number;
  readonly moment: number;
  readonly drag: number;
  readonly steps: number;
  readonly error: number;
  readonly converged: boolean;
}

const most = 40;

/** Greatest relative change of a last step: Newton's method then leaves about its square. */
const enough = 1e-4;

/** Stations by the nose whose layers are laid anew when the stagnation point has moved past one. */
const renewed = 6;

/**
 * Share of the chord from which a layer is turbulent in any case. A laminar layer that separates just before the trailing
 * edge lets the equations have several solutions; in wind tunnels the unsteady wake breaks it (judgement; it brings
 * lift-curve slope and moment nearer to measurement).
 */
const latest = 0.95;

/** By how much waves at a station's end must fall short before its transition is moved on, lest it go to and fro. */
const reluctance = 0.05;

export function solveAt(flow: PotentialFlow, angle: number, stream: Stream, start?: Solved, log?: (s: string) => void): Solved {
  const speeds = speedsAt(flow, angle);
  const wake = wakeFlow(flow, speeds, angle);
  const n = flow.panels.count;
  let below = start ? start.below : firstBelow(speeds, n);
  let inf = influence(flow, wake, speeds, below);
  const layers = start ? copy(start.layers) : guess(inf, course(flow.panels, wake.line, below, inf.speed), stream);
  if (start) {
    const by = speedsBy(inf, layers.mass);
    const moved = stagnation(by, below, n);
    if (moved !== below) inf = influence(flow, wake, speeds, moved);
    for (let i = 0; i < n; i++) {
      if (layers.turbulent[i]) continue;
      const speed = Math.max((i < below) === (i < moved) ? by[i] : -by[i], 1e-3);
      layers.mass[i] *= speed / layers.speed[i];
      layers.speed[i] = (i < below) === (i < moved) ? speed : -speed;
    }
    const flipped = layers.speed.map(Math.abs);
    reseat(layers, course(flow.panels, wake.line, moved, flipped), below, moved, stream);
    below = moved;
  }
  let line = course(flow.panels, wake.line, below, layers.speed);
  if (!start) for (let k = 0; k < 3; k++) march(layers, inf, line, stream);
  let error = Infinity;
  let k = 0;
  for (; k < most && error > enough; k++) {
    const change = newtonStep(layers, inf, line, stream);
    if (!change) break;
    const moved = apply(layers, change, line, stream);
    error = moved.error;
    const shifted = stagnation(layers.speed, below, n);
    if (shifted !== below) {
      const flipped = layers.speed.map((value, i) => (i >= Math.min(below, shifted) && i < Math.max(below, shifted) ? -value : value));
      line = course(flow.panels, wake.line, shifted, flipped);
      reseat(layers, line, below, shifted, stream);
      below = shifted;
      inf = influence(flow, wake, speeds, below);
    }
    line = course(flow.panels, wake.line, below, layers.speed);
    for (const side of [line.upper, line.lower]) {
      const i = side[0];
      layers.theta[i] = Math.sqrt((stagnationThickness * line.place[i]) / (stream.reynolds * layers.speed[i]));
      layers.mass[i] = stagnationShape * layers.theta[i] * layers.speed[i];
    }
    setTransition(layers, flow.panels.x, line, stream);
    log?.(`${k} err ${error.toExponential(2)} rate ${moved.rate.toFixed(3)} at ${moved.at} below ${below} tr ${[line.upper, line.lower].map((s) => { const i = [...s].find((j) => layers.turbulent[j]); return i === undefined ? "-" : flow.panels.x[i].toFixed(3); })}`);
  }
  const speed = layers.speed.slice(0, n).map((value, i) => (i < below ? value : -value));
  const { lift, moment } = pressureForces(flow.panels, speed, angle);
  const end = inf.count - 1;
  const shape = layers.mass[end] / layers.speed[end] / layers.theta[end];
  const drag = 2 * layers.theta[end] * layers.speed[end] ** ((shape + 5) / 2);
  return { angle, below, layers, lift, moment, drag, steps: k, error, converged: error <= enough };
}

/** Speeds at all stations by the masses as they stand. */
function speedsBy({ count, speed, byMass }: Influence, mass: Float64Array): Float64Array {
  return speed.map((value, i) => {
    let sum = value;
    for (let j = 0; j < count; j++) sum += byMass[i * count + j] * mass[j];
    return sum;
  });
}

function firstBelow(speeds: Float64Array, n: number): number {
  let i = n >> 1;
  while (i > 3 && speeds[i - 1] < 0) i--;
  while (i < n - 3 && speeds[i] > 0) i++;
  return i;
}

const copy = ({ theta, mass, state, speed, turbulent }: Layers): Layers =>
  ({ theta: theta.slice(), mass: mass.slice(), state: state.slice(), speed: speed.slice(), turbulent: turbulent.slice() });

/** Takes the step, or that share of it that changes nothing by more than half. */
function apply(layers: Layers, change: Change, line: Course, _stream: Stream): { error: number; rate: number; at: string } {
  const n = layers.theta.length;
  let rate = 1;
  let error = 0;
  let at = "";
  const near = new Set([...line.upper.slice(0, 3), ...line.lower.slice(0, 3)]);
  for (let i = 0; i < n; i++) {
    if (near.has(i)) continue;
    const [t, m, u] = [change.theta[i] / layers.theta[i], change.mass[i] / layers.mass[i], change.speed[i] / Math.max(layers.speed[i], 0.2)];
    const s = layers.turbulent[i] ? change.state[i] / layers.state[i] : change.state[i] / 10;
    for (const [name, v] of [["t", t], ["m", m], ["u", u], ["s", s]] as const) {
      if (Math.abs(v) > error) { error = Math.abs(v); at = name + i; }
      const limit = v > 0 ? 1 : 0.5;
      if (rate * Math.abs(v) > limit) rate = limit / Math.abs(v);
    }
  }
  for (let i = 0; i < n; i++) {
    const bound = near.has(i) ? 0.6 : 1;
    layers.theta[i] += Math.max(-bound * layers.theta[i], Math.min(layers.theta[i], rate * change.theta[i]));
    layers.mass[i] += Math.max(-bound * layers.mass[i], Math.min(layers.mass[i], rate * change.mass[i]));
    layers.state[i] += rate * change.state[i];
    layers.speed[i] += rate * change.speed[i];
    if (layers.turbulent[i]) layers.state[i] = Math.min(0.3, Math.max(1e-4, layers.state[i]));
  }
  for (const [side, kind] of [[line.upper, "turbulent"], [line.lower, "turbulent"], [line.wake, "wake"]] as const) {
    for (const i of side) {
      if (layers.speed[i] > 0) layers.mass[i] = Math.max(layers.mass[i], layers.speed[i] * layers.theta[i] * leastShape(kind));
    }
  }
  return { error, rate, at };
}

/** Where the flow divides now: the first node below. */
function stagnation(speed: Float64Array, below: number, n: number): number {
  let at = below;
  while (at > 3 && speed[at - 1] <= 0) at--;
  if (at === below) while (at < n - 3 && speed[at] <= 0) at++;
  return at;
}

/** Hands nodes to the other side when the stagnation point has passed them, and lays the layers by the nose anew. */
function reseat(layers: Layers, line: Course, from: number, to: number, { reynolds }: Stream): void {
  for (let i = Math.min(from, to); i < Math.max(from, to); i++) {
    layers.speed[i] = -layers.speed[i];
    layers.state[i] = 0;
    layers.turbulent[i] = 0;
  }
  for (const side of [line.upper, line.lower]) {
    let integral = 0;
    let [place, before] = [0, 0];
    for (const i of side.subarray(0, renewed)) {
      if (layers.turbulent[i]) break;
      const speed = (layers.speed[i] = Math.max(layers.speed[i], before * 0.9, 1e-3));
      integral += thwaitesIntegral(before, speed, line.place[i] - place);
      layers.theta[i] = thwaitesTheta(integral, speed, reynolds);
      const rise = (speed - before) / (line.place[i] - place);
      layers.mass[i] = speed * layers.theta[i] * thwaitesShape(layers.theta[i] ** 2 * reynolds * rise);
      [place, before] = [line.place[i], speed];
    }
  }
}

const [p, q] = [station(), station()];

/** Follows the waves along each side as the layers now stand, and sets which stations are turbulent. */
function setTransition(layers: Layers, x: Float64Array, line: Course, stream: Stream): void {
  const { reynolds, critical } = stream;
  for (const side of [line.upper, line.lower]) {
    let waves = 0;
    let turbulent = false;
    fillAt(p, layers, side[0], line, 0, reynolds);
    layers.state[side[0]] = 0;
    layers.turbulent[side[0]] = 0;
    for (let k = 1; k < side.length; k++) {
      const i = side[k];
      if (!turbulent) {
        fillAt(q, layers, i, line, 0, reynolds);
        p.state = waves;
        if (transitionShare(p, q, critical, reynolds) < (layers.turbulent[i] && !layers.turbulent[side[k - 1]] ? 1 + reluctance : 1) || x[i] > latest) turbulent = true;
        else waves += 0.5 * (q.place - p.place) * (p.growth + q.growth);
      }
      if (!turbulent) {
        layers.state[i] = waves;
        layers.turbulent[i] = 0;
        fillAt(p, layers, i, line, waves, reynolds);
      } else if (!layers.turbulent[i]) {
        layers.turbulent[i] = 1;
        fill(q, "turbulent", line.place[i], layers.theta[i], layers.mass[i], 0.05, layers.speed[i], reynolds);
        layers.state[i] = Math.max(0.02, stressAtTransition(q.shape) * q.equilibrium);
      }
    }
  }
}

function fillAt(out: ReturnType<typeof station>, layers: Layers, i: number, line: Course, state: number, reynolds: number): void {
  fill(out, "laminar", line.place[i], layers.theta[i], layers.mass[i], state, layers.speed[i], reynolds);
}

export type { Influence, WakeFlow };
