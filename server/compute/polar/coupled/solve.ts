import { pressureForces } from "../flow/forces";
import { speedsAt, type PotentialFlow } from "../flow/potential";
import { wakeAt, type WakeFlow } from "../flow/wake";
import type { Stream } from "../layer/jacobian";
import { influence, type Influence } from "./influence";
import { course, type Course, type Layers } from "./layers";
import { guess, march } from "./march";
import { newtonStep } from "./newton";
import { firstBelow, handOver, layNose, layStagnation } from "./nose";
import { update } from "./update";
import { followWaves } from "./waves";

/** The flow about a section at one angle, layers and all. Coefficients on the chord, angle in rad. */
export interface Solved {
  readonly angle: number;
  /** Whether the equations are met. If not, the rest means nothing. */
  readonly met: boolean;
  readonly lift: number;
  readonly drag: number;
  /** About the quarter chord, nose up. */
  readonly moment: number;
  readonly layers: Layers;
  /** The first node below the stagnation point. */
  readonly below: number;
}

const most = 60;

/** Greatest relative change of a last step: Newton's method then leaves about its square. */
const enough = 1e-3;

/**
 * Steps after which only a share is taken and a greater change is enough: transition then goes to and fro about a station,
 * which moves lift by less than 0.001.
 */
const patience = 10;
const loose = 1e-2;

/** Steps after which one that would still more than double a value is the last: from a solution near by, and from none. */
const hopeless = { near: 20, far: 25 };

/** The same for steps that come to less: after so many, above this change. */
const stuck: readonly (readonly [steps: number, change: number])[] = [[20, 0.3], [28, 0.1]];

/** Sweeps along the flow that prepare a first solution. */
const sweeps = 3;

interface Case {
  readonly flow: PotentialFlow;
  readonly wake: WakeFlow;
  readonly speeds: Float64Array;
  readonly stream: Stream;
}

interface Stand {
  readonly layers: Layers;
  readonly below: number;
  readonly influence: Influence;
  readonly line: Course;
}

/** Solves potential flow, boundary layers and wake together; `start` is a solution at an angle near by. Yields at each step. */
export function* solveAt(flow: PotentialFlow, angle: number, stream: Stream, start?: Solved): Generator<void, Solved> {
  const speeds = speedsAt(flow, angle);
  const given: Case = { flow, speeds, stream, wake: wakeAt(flow, speeds, angle) };
  let stand = start ? fromSolved(given, start) : yield* fromNothing(given);
  yield;
  let error = Infinity;
  for (let k = 0; k < most && error > (k < patience ? enough : loose); k++) {
    const change = newtonStep(stand.layers, stand.influence, stand.line, stream);
    if (!change) break;
    error = update(stand.layers, change, stand.line, k < patience ? 1 : k < 2 * patience ? 0.5 : 0.25);
    if (Number.isNaN(error) || (k > (start ? hopeless.near : hopeless.far) && error > 1) || stuck.some(([steps, change]) => k >= steps && error > change)) break;
    stand = settled(given, stand);
    yield;
  }
  return { angle, met: error <= loose, ...forces(flow, stand, angle), layers: stand.layers, below: stand.below };
}

function* fromNothing({ flow, wake, speeds, stream }: Case): Generator<void, Stand> {
  const nodes = flow.panels.count;
  const outwards = speeds.map((value, i) => (i < nodes >> 1 ? value : -value));
  const below = firstBelow(outwards, nodes >> 1, nodes);
  const by = influence(flow, wake, speeds, below);
  const line = course(flow.panels, wake.line, below, by.speed);
  const layers = guess(by, line, stream);
  for (let k = 0; k < sweeps; k++) {
    march(layers, by, line, stream);
    yield;
  }
  return { layers, below, influence: by, line: course(flow.panels, wake.line, below, layers.speed) };
}

/** The layers of another angle in the speeds of this one: laminar ones keep thickness and shape. */
function fromSolved({ flow, wake, speeds, stream }: Case, start: Solved): Stand {
  const nodes = flow.panels.count;
  const layers = copied(start.layers);
  const first = influence(flow, wake, speeds, start.below);
  const fresh = speedsBy(first, layers.mass);
  const below = firstBelow(fresh, start.below, nodes);
  for (let i = 0; i < nodes; i++) {
    if (layers.turbulent[i]) continue;
    const passed = i < start.below !== i < below;
    const speed = Math.max(passed ? -fresh[i] : fresh[i], 1e-3);
    layers.mass[i] *= speed / layers.speed[i];
    layers.speed[i] = passed ? -speed : speed;
  }
  handOver(layers, start.below, below);
  layNose(layers, course(flow.panels, wake.line, below, layers.speed), stream);
  const by = below === start.below ? first : influence(flow, wake, speeds, below);
  return { layers, below, influence: by, line: course(flow.panels, wake.line, below, layers.speed) };
}

/** After a step: the stagnation point, the nose and transition as they now are. */
function settled({ flow, wake, speeds, stream }: Case, stand: Stand): Stand {
  const { layers } = stand;
  const below = firstBelow(layers.speed, stand.below, flow.panels.count);
  let by = stand.influence;
  if (below !== stand.below) {
    handOver(layers, stand.below, below);
    layNose(layers, course(flow.panels, wake.line, below, layers.speed), stream);
    by = influence(flow, wake, speeds, below);
  }
  const line = course(flow.panels, wake.line, below, layers.speed);
  layStagnation(layers, line, stream);
  followWaves(layers, flow.panels.x, line, stream);
  return { layers, below, influence: by, line };
}

/** Drag by the momentum the wake has lost, carried on to infinity (H. B. Squire and A. D. Young, ARC R&M 1838, 1937). */
function forces({ panels }: PotentialFlow, { layers, below }: Stand, angle: number): { lift: number; moment: number; drag: number } {
  const speed = layers.speed.subarray(0, panels.count).map((value, i) => (i < below ? value : -value));
  const end = layers.theta.length - 1;
  const shape = layers.mass[end] / layers.speed[end] / layers.theta[end];
  return { ...pressureForces(panels, speed, angle), drag: 2 * layers.theta[end] * layers.speed[end] ** ((shape + 5) / 2) };
}

/** Speeds at all stations by the masses as they stand. */
function speedsBy({ count, speed, byMass }: Influence, mass: Float64Array): Float64Array {
  return speed.map((value, i) => {
    let sum = value;
    for (let j = 0; j < count; j++) sum += byMass[i * count + j] * mass[j];
    return sum;
  });
}

const copied = ({ theta, mass, state, speed, turbulent }: Layers): Layers =>
  ({ theta: theta.slice(), mass: mass.slice(), state: state.slice(), speed: speed.slice(), turbulent: turbulent.slice() });
