import type { Stream } from "../layer/jacobian";
import { fill, station } from "../layer/station";
import { transitionShare } from "../layer/transition";
import { stressAtTransition } from "../layer/turbulent";
import { fillStation, type Course, type Layers } from "./layers";

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

const [before, at] = [station(), station()];

/** Follows the waves along each side in the layers as they stand, and so sets which stations are turbulent; `x` by node. */
export function followWaves(layers: Layers, x: Float64Array, line: Course, stream: Stream): void {
  const { reynolds, critical } = stream;
  const { place } = line;
  for (const side of [line.upper, line.lower]) {
    let turbulent = false;
    const old = side.findIndex((i) => layers.turbulent[i] === 1);
    const farthest = old < 0 ? side.length : old + stride;
    layers.state[side[0]] = 0;
    layers.turbulent[side[0]] = 0;
    fillStation(before, layers, side[0], "laminar", place[side[0]], reynolds);
    for (let k = 1; k < side.length; k++) {
      const i = side[k];
      if (!turbulent) {
        fillStation(at, layers, i, "laminar", place[i], reynolds);
        const wasFirst = layers.turbulent[i] === 1 && layers.turbulent[side[k - 1]] === 0;
        turbulent = x[i] > latest || k >= farthest || transitionShare(before, at, critical, reynolds) < (wasFirst ? 1 + reluctance : 1);
      }
      if (turbulent) {
        if (!layers.turbulent[i]) begin(layers, i, place[i], reynolds);
        continue;
      }
      layers.state[i] = before.state + 0.5 * (at.place - before.place) * (before.growth + at.growth);
      layers.turbulent[i] = 0;
      fillStation(before, layers, i, "laminar", place[i], reynolds);
    }
  }
}

/** Makes a laminar station turbulent. */
export function begin(layers: Layers, i: number, place: number, reynolds: number): void {
  layers.turbulent[i] = 1;
  fill(at, "turbulent", place, layers.theta[i], layers.mass[i], 0.05, layers.speed[i], reynolds);
  layers.state[i] = Math.max(0.02, stressAtTransition(at.shape) * at.equilibrium);
}
