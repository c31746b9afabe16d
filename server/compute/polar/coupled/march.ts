import { linear, linearise, kindAfter, type Mode, type Stream } from "../layer/jacobian";
import { stagnationShape, stagnationThickness } from "../layer/laminar";
import { fill, leastShape, station } from "../layer/station";
import type { Influence } from "./influence";
import { fillEdge, type Course, type Layers } from "./layers";
import { begin } from "./waves";

const [before, at, lin] = [station(), station(), linear()];

/** A first guess of the layers: a plate's, of the speeds without layers. */
export function guess({ count, speed }: Influence, { upper, lower, wake, place }: Course, { reynolds }: Stream): Layers {
  const layers: Layers = {
    theta: new Float64Array(count), mass: new Float64Array(count), state: new Float64Array(count),
    speed: speed.map((value) => Math.max(value, 0.02)), turbulent: new Uint8Array(count),
  };
  for (const side of [upper, lower]) {
    for (const i of side) {
      layers.theta[i] = 0.664 * Math.sqrt(place[i] / reynolds);
      layers.mass[i] = layers.speed[i] * layers.theta[i] * 2.2;
    }
  }
  const [u, l] = [upper[upper.length - 1], lower[lower.length - 1]];
  for (const i of wake) {
    layers.theta[i] = layers.theta[u] + layers.theta[l];
    layers.mass[i] = layers.speed[i] * layers.theta[i] * 1.4;
    layers.turbulent[i] = 1;
    layers.state[i] = 0.03;
  }
  return layers;
}

/**
 * One sweep along the flow, each station solved with the speed's answer to its own mass, the others' masses as they
 * stand: A. E. P. Veldman's quasi-simultaneous method (AIAA Journal 19(1), 1981), which passes separation.
 */
export function march(layers: Layers, influence: Influence, line: Course, stream: Stream): void {
  for (const side of [line.upper, line.lower]) {
    startSide(layers, influence, side[0], line.place[side[0]], stream);
    for (let k = 1; k < side.length - 1; k++) marchTo(layers, influence, line, side[k - 1], side[k], stream);
    carry(layers, side[side.length - 2], side[side.length - 1]);
  }
  fillEdge(before, layers, line, stream.reynolds);
  for (const i of line.wake) {
    solveStation(layers, influence, i, "wake", line.place[i], stream);
    fill(before, "wake", line.place[i], layers.theta[i], layers.mass[i], layers.state[i], layers.speed[i], stream.reynolds);
  }
}

/** The trailing edge's speed hangs on both sides and the wake, so a single sweep can't solve it: it takes what comes to it. */
function carry(layers: Layers, from: number, to: number): void {
  for (const key of ["theta", "mass", "state", "speed", "turbulent"] as const) layers[key][to] = layers[key][from];
}

function startSide(layers: Layers, influence: Influence, i: number, place: number, { reynolds }: Stream): void {
  const others = fromOthers(influence, layers.mass, i);
  for (let k = 0; k < 5; k++) {
    layers.speed[i] = Math.max(1e-4, others + influence.byMass[i * influence.count + i] * layers.mass[i]);
    layers.theta[i] = Math.sqrt((stagnationThickness * place) / (reynolds * layers.speed[i]));
    layers.mass[i] = layers.speed[i] * layers.theta[i] * stagnationShape;
  }
  layers.state[i] = 0;
  layers.turbulent[i] = 0;
}

function marchTo(layers: Layers, influence: Influence, { place }: Course, from: number, i: number, stream: Stream): void {
  const turbulent = layers.turbulent[from] === 1;
  fill(before, turbulent ? "turbulent" : "laminar", place[from], layers.theta[from], layers.mass[from], layers.state[from], layers.speed[from], stream.reynolds);
  layers.turbulent[i] = turbulent ? 1 : 0;
  solveStation(layers, influence, i, turbulent ? "turbulent" : "laminar", place[i], stream);
  if (turbulent || layers.state[i] < stream.critical) return;
  begin(layers, i, place[i], stream.reynolds);
  solveStation(layers, influence, i, "transition", place[i], stream);
}

function fromOthers({ count, speed, byMass }: Influence, mass: Float64Array, i: number): number {
  let sum = speed[i];
  const row = i * count;
  for (let j = 0; j < count; j++) if (j !== i) sum += byMass[row + j] * mass[j];
  return sum;
}

/** Newton's method for θ, mass and state of station `i` behind `before`. */
function solveStation(layers: Layers, influence: Influence, i: number, mode: Mode, place: number, stream: Stream): void {
  const others = fromOthers(influence, layers.mass, i);
  const own = influence.byMass[i * influence.count + i];
  const kind = kindAfter(mode);
  let theta = before.theta;
  let state = mode === "transition" ? layers.state[i] : before.state;
  let mass = Math.max(layers.mass[i], before.mass * 0.8);
  let speed = Math.max(0.01, others + own * mass);
  for (let k = 0; k < 25; k++) {
    fill(at, kind, place, theta, mass, state, speed, stream.reynolds);
    linearise(lin, before, at, mode, stream, false);
    const step = solve3(lin.slope, lin.value, own);
    if (!step) break;
    const rate = limited(step, theta, mass, state, kind === "laminar");
    theta += rate * step[0];
    mass += rate * step[1];
    state += rate * step[2];
    speed = Math.max(0.01, others + own * mass);
    mass = Math.max(mass, speed * theta * leastShape(kind));
    if (rate === 1 && Math.abs(step[0]) < 1e-7 * theta && Math.abs(step[1]) < 1e-7 * mass) break;
  }
  layers.theta[i] = theta;
  layers.mass[i] = mass;
  layers.state[i] = state;
  layers.speed[i] = speed;
}

/** Share of a step that changes no value by more than a third. */
function limited(step: ArrayLike<number>, theta: number, mass: number, state: number, laminar: boolean): number {
  const change = Math.max(Math.abs(step[0]) / theta, Math.abs(step[1]) / mass, laminar ? 0 : Math.abs(step[2]) / state);
  return change > 0.3 ? 0.3 / change : 1;
}

/** Step of θ, mass and state with speed following mass at rate `own`; undefined where the equations don't tell. */
function solve3(slope: Float64Array, value: Float64Array, own: number): [number, number, number] | undefined {
  const at = (e: number, k: number) => slope[e * 8 + 4 + k] + (k === 1 ? own * slope[e * 8 + 7] : 0);
  const [a, b, c, d, e, f, g, h, i] = [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(Math.abs(determinant) > 1e-300)) return undefined;
  const [p, q, r] = [-value[0], -value[1], -value[2]];
  return [
    (p * (e * i - f * h) - b * (q * i - f * r) + c * (q * h - e * r)) / determinant,
    (a * (q * i - f * r) - p * (d * i - f * g) + c * (d * r - q * g)) / determinant,
    (a * (e * r - q * h) - b * (d * r - q * g) + p * (d * h - e * g)) / determinant,
  ];
}
