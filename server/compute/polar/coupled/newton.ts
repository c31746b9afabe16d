import { factorSteps, solveFactored } from "../../lattice/lu";
import { kindAfter, linear, linearise, type Linear, type Stream } from "../layer/jacobian";
import { stagnationShape, stagnationThickness } from "../layer/laminar";
import { station } from "../layer/station";
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
 * The stations' equations solved for θ, state and speed: change = constant + own · d(mass) + before · (change before) +
 * shift · (shift of the station downstream), three by station; the change before is of θ, mass, state and speed.
 */
interface Steps {
  readonly constant: Float64Array;
  readonly own: Float64Array;
  readonly before: Float64Array;
  readonly shift: Float64Array;
}

/** What a step needs room for, kept for the next: none is left unfinished when another begins. */
interface Room {
  readonly count: number;
  readonly steps: Steps;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
  readonly change: Change;
  readonly rows: readonly [edge: Rows, current: Rows, next: Rows];
}

let room: Room | undefined;

function roomFor(count: number): Room {
  const size = count + 1;
  const array = (length: number) => new Float64Array(length);
  room = room?.count === count ? room : {
    count,
    steps: { constant: array(3 * count), own: array(3 * count), before: array(12 * count), shift: array(3 * count) },
    matrix: array(size * size), right: array(size), rows: [rows(size), rows(size), rows(size)],
    change: { theta: array(count), mass: array(count), state: array(count), speed: array(count) },
  };
  return room;
}

/**
 * Newton's step for all equations at once (Drela and Giles 1987 solve the same set). Going downstream, each station's θ,
 * state and speed are written by the masses up to it, as in an inverse method, which separation does not upset; speeds
 * so written are then equal to those that all masses give, one linear system of as many unknowns as there are stations, and one
 * more for the place of the stagnation point.
 * Undefined where that system is singular. What is given holds until the next step is asked for.
 */
export function newtonStep(layers: Layers, influence: Influence, line: Course, stream: Stream): Change | undefined {
  const { count, byMass } = influence;
  const { steps, matrix, right, rows, change } = roomFor(count);
  fillSteps(steps, layers, line, stream);
  const size = count + 1;
  matrix.fill(0, count * size);
  right[count] = 0;
  for (let i = 0; i < count; i++) {
    let speed = influence.speed[i];
    for (let j = 0, from = i * count, to = i * size; j < count; j++, from++, to++) {
      speed += byMass[from] * layers.mass[j];
      matrix[to] = -byMass[from];
    }
    matrix[i * size + count] = 0;
    right[i] = speed - layers.speed[i];
  }
  addSpeeds(matrix, right, steps, rows, line, layers);
  const factored = finished(factorSteps(matrix, size));
  if (!factored) return undefined;
  unfold(change, steps, solveFactored(factored, right), line, layers);
  return change;
}

function finished<T>(work: Generator<void, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

let [a, b] = [station(), station()];
const lin = linear();

function fillSteps(steps: Steps, layers: Layers, line: Course, stream: Stream): void {
  const { reynolds } = stream;
  for (const side of [line.upper, line.lower]) {
    stagnationStep(steps, layers, side[0], line.place[side[0]], reynolds);
    fillStation(a, layers, side[0], "laminar", line.place[side[0]], reynolds);
    for (let k = 1; k < side.length; k++) {
      const mode = modeBetween(layers, side[k - 1], side[k]);
      fillStation(b, layers, side[k], kindAfter(mode), line.place[side[k]], reynolds);
      linearise(lin, a, b, mode, stream);
      eliminate(steps, side[k], lin);
      [a, b] = [b, a];
    }
  }
  fillEdge(a, layers, line, reynolds);
  for (const i of line.wake) {
    fillStation(b, layers, i, "wake", line.place[i], reynolds);
    linearise(lin, a, b, "wake", stream);
    eliminate(steps, i, lin);
    [a, b] = [b, a];
  }
}

/** θ and shape parameter of the flow from a stagnation point, by mass and speed. */
function stagnationStep({ constant, own, before, shift }: Steps, layers: Layers, i: number, place: number, reynolds: number): void {
  const [theta, mass, speed] = [layers.theta[i], layers.mass[i], layers.speed[i]];
  // mass = H θ u and θ = √(K s ⁄ (R u)): so u = mass² R ⁄ (H² K s).
  const wanted = (mass * mass * reynolds) / (stagnationShape ** 2 * stagnationThickness * place);
  const thin = mass / (stagnationShape * wanted);
  constant.set([thin - theta, 0, wanted - speed], 3 * i);
  own.set([-thin / mass, 0, (2 * wanted) / mass], 3 * i);
  shift.set([thin / place, 0, -wanted / place], 3 * i);
  before.fill(0, 12 * i, 12 * i + 12);
}

/** Solves for the derivatives by θ, state and speed (columns 4, 6 and 7), by cofactors. */
function eliminate({ constant, own, before, shift }: Steps, i: number, { value, slope: m, shift: byShift }: Linear): void {
  const x0 = m[14] * m[23] - m[15] * m[22], x1 = m[15] * m[20] - m[12] * m[23], x2 = m[12] * m[22] - m[14] * m[20];
  const scale = -1 / (m[4] * x0 + m[6] * x1 + m[7] * x2);
  const row = (r: number, p: number, q: number, s: number) => {
    const at = 3 * i + r;
    constant[at] = p * value[0] + q * value[1] + s * value[2];
    own[at] = p * m[5] + q * m[13] + s * m[21];
    shift[at] = p * byShift[0] + q * byShift[1] + s * byShift[2];
    for (let k = 0; k < 4; k++) before[4 * at + k] = p * m[k] + q * m[8 + k] + s * m[16 + k];
  };
  row(0, scale * x0, scale * (m[7] * m[22] - m[6] * m[23]), scale * (m[6] * m[15] - m[7] * m[14]));
  row(1, scale * x1, scale * (m[4] * m[23] - m[7] * m[20]), scale * (m[7] * m[12] - m[4] * m[15]));
  row(2, scale * x2, scale * (m[6] * m[20] - m[4] * m[22]), scale * (m[4] * m[14] - m[6] * m[12]));
}

/** Changes of θ, mass, state and speed, written by the unknowns: the masses' changes and the stagnation point's. */
type Rows = readonly [theta: Float64Array, mass: Float64Array, state: Float64Array, speed: Float64Array];

/** Where θ, state and speed stand in rows. */
const slots = [0, 2, 3];

/** Each row's last entry is its constant. */
const rows = (size: number): Rows => [new Float64Array(size + 1), new Float64Array(size + 1), new Float64Array(size + 1), new Float64Array(size + 1)];

/** Adds each station's speed, written by the unknowns, to the matrix; its constants go right. The last row places the stagnation point. */
function addSpeeds(matrix: Float64Array, right: Float64Array, { constant, own, before, shift }: Steps, rows: Room["rows"], line: Course, layers: Layers): void {
  const size = right.length;
  const [edge] = rows;
  let [, current, next] = rows;
  for (const row of edge) row.fill(0);
  // Unknowns that the rows hold: masses of the nodes passed so far.
  let [low, high] = [0, 0];
  const advance = (i: number, away: number) => {
    low = Math.min(low, i);
    high = Math.max(high, i + 1);
    const theta = current[0], mass = current[1], state = current[2], speed = current[3];
    for (let r = 0; r < 3; r++) {
      const by = 12 * i + 4 * r;
      const p = before[by], q = before[by + 1], s = before[by + 2], t = before[by + 3];
      const out = next[slots[r]];
      for (let j = low; j < high; j++) out[j] = p * theta[j] + q * mass[j] + s * state[j] + t * speed[j];
      for (let j = size - 1; j <= size; j++) out[j] = p * theta[j] + q * mass[j] + s * state[j] + t * speed[j];
      out[i] += own[3 * i + r];
      out[size - 1] += away * shift[3 * i + r];
      out[size] += constant[3 * i + r];
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

function unfold(change: Change, steps: Steps, solution: Float64Array, line: Course, layers: Layers): void {
  const { theta, mass, state, speed } = change;
  const count = theta.length;
  const away = solution[count];
  mass.set(solution.subarray(0, count));
  const held = new Float64Array(4);
  const advance = (i: number, shift: number): void => {
    const value = (r: number) => {
      const by = 12 * i + 4 * r;
      return steps.constant[3 * i + r] + steps.own[3 * i + r] * mass[i] + steps.shift[3 * i + r] * shift +
        steps.before[by] * held[0] + steps.before[by + 1] * held[1] + steps.before[by + 2] * held[2] + steps.before[by + 3] * held[3];
    };
    theta[i] = value(0);
    state[i] = value(1);
    speed[i] = value(2);
    held[0] = theta[i];
    held[1] = mass[i];
    held[2] = state[i];
    held[3] = speed[i];
  };
  const edge = new Float64Array(4);
  for (const side of [line.upper, line.lower]) {
    held.fill(0);
    for (const i of side) advance(i, side === line.upper ? away : -away);
    const weights = edgeWeights(layers, line, side);
    for (let k = 0; k < 4; k++) edge[k] += weights[k] * held[k];
  }
  held.set(edge);
  for (const i of line.wake) advance(i, -away);
}
