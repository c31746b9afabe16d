import { factorSteps, solveFactored } from "../../lattice/lu";
import { linear, linearise, type Linear, type Mode, type Stream } from "../layer/jacobian";
import { stagnationShape, stagnationThickness } from "../layer/laminar";
import { station, type Station } from "../layer/station";
import type { Influence } from "./influence";
import { fillEdge, fillStation, modeBetween, type Course, type Layers } from "./layers";

/** A change of all stations. */
export interface Change {
  readonly theta: Float64Array;
  readonly mass: Float64Array;
  readonly state: Float64Array;
  readonly speed: Float64Array;
}

/**
 * One station's equations solved for θ, state and speed: change = constant + own · d(mass) + before · (change before), row by
 * unknown; the change before is of θ, mass, state and speed.
 */
interface Step {
  readonly constant: Float64Array;
  readonly own: Float64Array;
  readonly before: Float64Array;
  /** By a shift of the station downstream. */
  readonly shift: Float64Array;
}

/**
 * Newton's step for all equations at once (Drela and Giles 1987 solve the same set). Going downstream, each station's θ,
 * state and speed are written by the masses up to it, as in an inverse method, which separation does not upset; speeds
 * so written are then equal to those that all masses give, one linear system of as many unknowns as there are stations, and one
 * more for the place of the stagnation point.
 * Undefined where that system is singular.
 */
export function newtonStep(layers: Layers, influence: Influence, line: Course, stream: Stream): Change | undefined {
  const { count, byMass } = influence;
  const steps = stationSteps(layers, line, stream);
  const size = count + 1;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (let i = 0; i < count; i++) {
    let speed = influence.speed[i];
    for (let j = 0; j < count; j++) {
      speed += byMass[i * count + j] * layers.mass[j];
      matrix[i * size + j] = -byMass[i * count + j];
    }
    right[i] = speed - layers.speed[i];
  }
  addSpeeds(matrix, right, steps, line, layers, size);
  const factored = finished(factorSteps(matrix, size));
  if (!factored) return undefined;
  return unfold(steps, solveFactored(factored, right), line, layers);
}

function finished<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

const [a, b] = [station(), station()];
const lin = linear();

function stationSteps(layers: Layers, line: Course, stream: Stream): Step[] {
  const steps: Step[] = [];
  const { reynolds } = stream;
  for (const side of [line.upper, line.lower]) {
    steps[side[0]] = stagnationStep(layers, side[0], line.place[side[0]], reynolds);
    fillStation(a, layers, side[0], "laminar", line.place[side[0]], reynolds);
    for (let k = 1; k < side.length; k++) {
      const mode = modeBetween(layers, side[k - 1], side[k]);
      fillStation(b, layers, side[k], mode === "laminar" ? "laminar" : "turbulent", line.place[side[k]], reynolds);
      steps[side[k]] = stepOf(a, b, mode, stream);
      fillStation(a, layers, side[k], mode === "laminar" ? "laminar" : "turbulent", line.place[side[k]], reynolds);
    }
  }
  fillEdge(a, layers, line, reynolds);
  for (const i of line.wake) {
    fillStation(b, layers, i, "wake", line.place[i], reynolds);
    steps[i] = stepOf(a, b, "wake", stream);
    fillStation(a, layers, i, "wake", line.place[i], reynolds);
  }
  return steps;
}

function stepOf(from: Station, to: Station, mode: Mode, stream: Stream): Step {
  linearise(lin, from, to, mode, stream);
  return eliminated(lin);
}

/** θ and shape parameter of the flow from a stagnation point, by mass and speed. */
function stagnationStep(layers: Layers, i: number, place: number, reynolds: number): Step {
  const [theta, mass, speed] = [layers.theta[i], layers.mass[i], layers.speed[i]];
  // mass = H θ u and θ = √(K s ⁄ (R u)): so u = mass² R ⁄ (H² K s).
  const wanted = (mass * mass * reynolds) / (stagnationShape ** 2 * stagnationThickness * place);
  const slope = (2 * wanted) / mass;
  const thin = mass / (stagnationShape * wanted);
  const constant = Float64Array.of(thin - theta, 0, wanted - speed);
  const own = Float64Array.of(-thin / mass, 0, slope);
  const shift = Float64Array.of(thin / place, 0, -wanted / place);
  return { constant, own, before: new Float64Array(12), shift };
}

/** Solves for the derivatives by θ, state and speed (columns 4, 6 and 7), by cofactors. */
function eliminated({ value, slope: m, shift: byShift }: Linear): Step {
  const step: Step = { constant: new Float64Array(3), own: new Float64Array(3), before: new Float64Array(12), shift: new Float64Array(3) };
  const x0 = m[14] * m[23] - m[15] * m[22], x1 = m[15] * m[20] - m[12] * m[23], x2 = m[12] * m[22] - m[14] * m[20];
  const scale = -1 / (m[4] * x0 + m[6] * x1 + m[7] * x2);
  const add = (r: number, e: number, cofactor: number) => {
    const factor = scale * cofactor;
    step.constant[r] += factor * value[e];
    step.own[r] += factor * m[e * 8 + 5];
    step.shift[r] += factor * byShift[e];
    for (let k = 0; k < 4; k++) step.before[r * 4 + k] += factor * m[e * 8 + k];
  };
  add(0, 0, x0);
  add(1, 0, x1);
  add(2, 0, x2);
  add(0, 1, m[7] * m[22] - m[6] * m[23]);
  add(1, 1, m[4] * m[23] - m[7] * m[20]);
  add(2, 1, m[6] * m[20] - m[4] * m[22]);
  add(0, 2, m[6] * m[15] - m[7] * m[14]);
  add(1, 2, m[7] * m[12] - m[4] * m[15]);
  add(2, 2, m[4] * m[14] - m[6] * m[12]);
  return step;
}

/** Changes of θ, mass, state and speed, written by the unknowns: the masses' changes and the stagnation point's. */
type Rows = readonly [theta: Float64Array, mass: Float64Array, state: Float64Array, speed: Float64Array];

/** Where θ, state and speed stand in rows. */
const slots = [0, 2, 3];

/** Each row's last entry is its constant. */
const rows = (size: number): Rows => [new Float64Array(size + 1), new Float64Array(size + 1), new Float64Array(size + 1), new Float64Array(size + 1)];

/** Adds each station's speed, written by the unknowns, to the matrix; its constants go right. The last row places the stagnation point. */
function addSpeeds(matrix: Float64Array, right: Float64Array, steps: readonly Step[], line: Course, layers: Layers, size: number): void {
  const edge = rows(size);
  let current = rows(size);
  let next = rows(size);
  // Unknowns that the rows hold: masses of the nodes passed so far.
  let [low, high] = [0, 0];
  const advance = (i: number, away: number) => {
    const { constant, own, before, shift } = steps[i];
    [low, high] = [Math.min(low, i), Math.max(high, i + 1)];
    for (let r = 0; r < 3; r++) {
      const slot = slots[r];
      const p = before[r * 4], q = before[r * 4 + 1], s = before[r * 4 + 2], t = before[r * 4 + 3];
      const out = next[slot];
      const [theta, mass, state, speed] = current;
      for (let j = low; j < high; j++) out[j] = p * theta[j] + q * mass[j] + s * state[j] + t * speed[j];
      for (let j = size - 1; j <= size; j++) out[j] = p * theta[j] + q * mass[j] + s * state[j] + t * speed[j];
      out[i] += own[r];
      out[size - 1] += away * shift[r];
      out[size] += constant[r];
    }
    next[1].fill(0);
    next[1][i] = 1;
    for (let j = low; j < high; j++) matrix[i * size + j] += next[3][j];
    matrix[i * size + size - 1] += next[3][size - 1];
    right[i] -= next[3][size];
    [current, next] = [next, current];
  };
  const [first, second] = [line.upper[0], line.lower[0]];
  const [u, v] = [layers.speed[first], layers.speed[second]];
  const gap = line.place[first] + line.place[second];
  matrix[size * size - 1] = 1;
  for (const side of [line.upper, line.lower]) {
    for (const row of [...current, ...next]) row.fill(0);
    [low, high] = [side[0], side[0] + 1];
    const away = side === line.upper ? 1 : -1;
    for (const i of side) {
      advance(i, away);
      if (i !== side[0]) continue;
      const weight = (-away * gap * (away > 0 ? v : u)) / (u + v) ** 2;
      for (let j = 0; j < size; j++) matrix[(size - 1) * size + j] += weight * current[3][j];
      right[size - 1] -= weight * current[3][size];
    }
    const weights = edgeWeights(layers, line, side);
    for (let slot = 0; slot < 4; slot++) {
      for (let j = 0; j <= size; j++) edge[slot][j] += weights[slot] * current[slot][j];
    }
  }
  current = edge;
  for (const row of next) row.fill(0);
  [low, high] = [0, size - 1];
  for (const i of line.wake) advance(i, -1);
}

/** What a side's end gives to the θ, mass, state and speed of the wake's first station. */
function edgeWeights({ theta, turbulent }: Layers, { upper, lower }: Course, side: Int32Array): readonly number[] {
  const last = side[side.length - 1];
  const total = theta[upper[upper.length - 1]] + theta[lower[lower.length - 1]];
  return [1, 1, turbulent[last] ? theta[last] / total : 0, 0.5];
}

function unfold(steps: readonly Step[], solution: Float64Array, line: Course, layers: Layers): Change {
  const count = layers.theta.length;
  const away = solution[count];
  const change: Change = { theta: new Float64Array(count), mass: solution.subarray(0, count), state: new Float64Array(count), speed: new Float64Array(count) };
  const advance = (i: number, held: ArrayLike<number>, shift: number): Float64Array => {
    const step = steps[i];
    const value = (r: number) => step.constant[r] + step.own[r] * change.mass[i] + step.shift[r] * shift +
      step.before[r * 4] * held[0] + step.before[r * 4 + 1] * held[1] + step.before[r * 4 + 2] * held[2] + step.before[r * 4 + 3] * held[3];
    change.theta[i] = value(0);
    change.state[i] = value(1);
    change.speed[i] = value(2);
    return Float64Array.of(change.theta[i], change.mass[i], change.state[i], change.speed[i]);
  };
  const edge = new Float64Array(4);
  for (const side of [line.upper, line.lower]) {
    let held: Float64Array = new Float64Array(4);
    for (const i of side) held = advance(i, held, side === line.upper ? away : -away);
    const weights = edgeWeights(layers, line, side);
    for (let k = 0; k < 4; k++) edge[k] += weights[k] * held[k];
  }
  let held: Float64Array = edge;
  for (const i of line.wake) held = advance(i, held, -away);
  return change;
}
