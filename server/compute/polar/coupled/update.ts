import { leastShape } from "../layer/station";
import type { Course, Layers } from "./layers";
import type { Change } from "./newton";

/** No value may grow by more than its own, nor shrink by more than half of it, in one step. */
const [rise, fall] = [1, 0.5];

/** Stations next to the stagnation point count for neither limit nor error: theirs are values near nothing. */
const left = 3;

const mostStress = 0.3;

/** Takes a step, or that share of it that the limits and `largest` allow. Gives the greatest relative change that the whole step asks for. */
export function update(layers: Layers, change: Change, line: Course, largest: number): number {
  const { theta, mass, state, speed, turbulent } = layers;
  const count = theta.length;
  const near = new Uint8Array(count);
  for (const side of [line.upper, line.lower]) for (const i of side.subarray(0, left)) near[i] = 1;
  let rate = largest;
  let error = 0;
  const regard = (value: number) => {
    const size = Math.abs(value);
    // A step that isn't a number is an error too.
    if (!(size <= error)) error = size;
    const limit = value > 0 ? rise : fall;
    if (rate * size > limit) rate = limit / size;
  };
  for (let i = 0; i < count; i++) {
    if (near[i]) continue;
    regard(change.theta[i] / theta[i]);
    regard(change.mass[i] / mass[i]);
    regard(change.speed[i] / Math.max(speed[i], 0.2));
    regard(turbulent[i] ? change.state[i] / state[i] : change.state[i] / 10);
  }
  for (let i = 0; i < count; i++) {
    const least = near[i] ? -0.6 : -1;
    theta[i] += Math.max(least * theta[i], Math.min(theta[i], rate * change.theta[i]));
    mass[i] += Math.max(least * mass[i], Math.min(mass[i], rate * change.mass[i]));
    state[i] += rate * change.state[i];
    speed[i] += rate * change.speed[i];
    if (turbulent[i]) state[i] = Math.min(mostStress, Math.max(1e-4, state[i]));
  }
  for (const side of [line.upper, line.lower, line.wake]) {
    const least = leastShape(side === line.wake ? "wake" : "turbulent");
    for (const i of side) if (speed[i] > 0) mass[i] = Math.max(mass[i], speed[i] * theta[i] * least);
  }
  return error;
}
