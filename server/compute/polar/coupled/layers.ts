import type { Panels } from "../outline/panels";
import { fill, station, type Kind, type Station } from "../layer/station";
import { stressAtTransition } from "../layer/turbulent";
import type { Mode } from "../layer/jacobian";
import type { WakeLine } from "../flow/wake";

/** The boundary layers and the wake, by station: the outline's nodes, then the wake's ends after the first. */
export interface Layers {
  readonly theta: Float64Array;
  readonly mass: Float64Array;
  readonly state: Float64Array;
  readonly speed: Float64Array;
  readonly turbulent: Uint8Array;
}

/** Stations in the order of the flow, and how far each lies from the stagnation point. */
export interface Course {
  readonly upper: Int32Array;
  readonly lower: Int32Array;
  readonly wake: Int32Array;
  readonly place: Float64Array;
}

export function course(panels: Panels, wake: WakeLine, below: number, speed: Float64Array): Course {
  const n = panels.count;
  const share = speed[below - 1] / (speed[below - 1] + speed[below]);
  const stagnation = panels.along[below - 1] + panels.length[below - 1] * Math.min(0.999, Math.max(0.001, share));
  const place = new Float64Array(n + wake.count);
  for (let i = 0; i < n; i++) place[i] = Math.abs(panels.along[i] - stagnation);
  for (let k = 0; k < wake.count; k++) place[n + k] = (k === 0 ? place[n - 1] : place[n + k - 1]) + wake.length[k];
  return {
    upper: Int32Array.from({ length: below }, (_, k) => below - 1 - k),
    lower: Int32Array.from({ length: n - below }, (_, k) => below + k),
    wake: Int32Array.from({ length: wake.count }, (_, k) => n + k),
    place,
  };
}

export function fillStation(out: Station, layers: Layers, at: number, kind: Kind, place: number, reynolds: number): void {
  fill(out, kind, place, layers.theta[at], layers.mass[at], layers.state[at], layers.speed[at], reynolds);
}

/** What the layer does between two stations of one side. */
export function modeBetween({ turbulent }: Layers, before: number, at: number): Mode {
  if (turbulent[before]) return "turbulent";
  return turbulent[at] ? "transition" : "laminar";
}

const end = station();

/** Root of the stress coefficient that a side gives to the wake; a laminar one turns turbulent there. */
export function stressAtEnd(layers: Layers, at: number, place: number, reynolds: number): number {
  if (layers.turbulent[at]) return layers.state[at];
  fill(end, "turbulent", place, layers.theta[at], layers.mass[at], 0.05, layers.speed[at], reynolds);
  return stressAtTransition(end.shape) * end.equilibrium;
}

/** The wake's first station, where the two sides meet. */
export function fillEdge(out: Station, layers: Layers, { upper, lower, place }: Course, reynolds: number): void {
  const [u, l] = [upper[upper.length - 1], lower[lower.length - 1]];
  const theta = layers.theta[u] + layers.theta[l];
  const stress = layers.theta[u] * stressAtEnd(layers, u, place[u], reynolds) + layers.theta[l] * stressAtEnd(layers, l, place[l], reynolds);
  fill(out, "wake", place[l], theta, layers.mass[u] + layers.mass[l], stress / theta, 0.5 * (layers.speed[u] + layers.speed[l]), reynolds);
}
