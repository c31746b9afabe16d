import type { Stream } from "../layer/jacobian";
import { fill, growthIn, station } from "../layer/station";
import { stressAtTransition } from "../layer/turbulent";
import type { Course, Layers } from "./layers";

/** By how much waves at a station must fall short before its transition is moved on, lest it go to and fro. */
const reluctance = 0.1;

/** Stations by which transition may move downstream at once: behind it the layers are turbulent, and waves seem not to grow. */
const stride = 2;

/**
 * Share of the chord from which a layer is turbulent in any case. A laminar layer that separates just before the trailing
 * edge lets the equations have several solutions; in wind tunnels the unsteady wake breaks it (judgement; it brings
 * lift-curve slope and moment nearer to measurement).
 */
const latest = 0.95;

const at = station();

/** Follows the waves along each side in the layers as they stand, and so sets which stations are turbulent; `x` by node. */
export function followWaves(layers: Layers, x: Float64Array, line: Course, stream: Stream): void {
  const { reynolds, critical } = stream;
  const { theta, mass, speed, state } = layers;
  const { place } = line;
  for (const side of [line.upper, line.lower]) {
    let turbulent = false;
    const old = side.findIndex((i) => layers.turbulent[i] === 1);
    const farthest = old < 0 ? side.length : old + stride;
    let last = side[0];
    let lastGrowth = growthIn(theta[last], mass[last], speed[last], reynolds);
    state[last] = 0;
    layers.turbulent[last] = 0;
    for (let k = 1; k < side.length; k++) {
      const i = side[k];
      if (!turbulent) {
        const growth = growthIn(theta[i], mass[i], speed[i], reynolds);
        const amplitude = state[last] + 0.5 * (place[i] - place[last]) * (lastGrowth + growth);
        const wasFirst = layers.turbulent[i] === 1 && layers.turbulent[last] === 0;
        turbulent = x[i] > latest || k >= farthest || amplitude > (wasFirst ? critical - reluctance : critical);
        if (!turbulent) {
          state[i] = amplitude;
          layers.turbulent[i] = 0;
          [last, lastGrowth] = [i, growth];
        }
      }
      if (turbulent && !layers.turbulent[i]) begin(layers, i, place[i], reynolds);
    }
  }
}

/** Makes a laminar station turbulent. */
export function begin(layers: Layers, i: number, place: number, reynolds: number): void {
  layers.turbulent[i] = 1;
  fill(at, "turbulent", place, layers.theta[i], layers.mass[i], 0.05, layers.speed[i], reynolds);
  layers.state[i] = Math.max(0.02, stressAtTransition(at.shape) * at.equilibrium);
}
