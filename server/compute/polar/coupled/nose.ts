import type { Stream } from "../layer/jacobian";
import { stagnationShape, stagnationThickness } from "../layer/laminar";
import { thwaitesIntegral, thwaitesShape, thwaitesTheta } from "../layer/thwaites";
import type { Course, Layers } from "./layers";

/** Stations by the nose whose layers are laid anew when the stagnation point has moved past one. */
const renewed = 6;

/** The first node below the point where the flow divides, looked for from where it was. */
export function firstBelow(speed: ArrayLike<number>, below: number, nodes: number): number {
  let at = below;
  while (at > 3 && speed[at - 1] <= 0) at--;
  if (at === below) while (at < nodes - 3 && speed[at] <= 0) at++;
  return at;
}

/** Nodes between the two go to the other side: their speed counts the other way, their layers begin anew. */
export function handOver(layers: Layers, from: number, to: number): void {
  for (let i = Math.min(from, to); i < Math.max(from, to); i++) {
    layers.speed[i] = -layers.speed[i];
    layers.state[i] = 0;
    layers.turbulent[i] = 0;
  }
}

/** Lays the first stations of both sides by Thwaites' method in the speeds as they stand, mended where they don't rise. */
export function layNose(layers: Layers, line: Course, { reynolds }: Stream): void {
  for (const side of [line.upper, line.lower]) {
    let integral = 0;
    let place = 0;
    let before = 0;
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

/** The first station of each side, by the flow from a stagnation point. */
export function layStagnation(layers: Layers, line: Course, { reynolds }: Stream): void {
  for (const [i] of [line.upper, line.lower]) {
    layers.theta[i] = Math.sqrt((stagnationThickness * line.place[i]) / (reynolds * layers.speed[i]));
    layers.mass[i] = stagnationShape * layers.theta[i] * layers.speed[i];
  }
}
