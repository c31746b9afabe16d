import { bracketedRoot } from "../root";
import { speedsOf, weightOf, type Aeroplane } from "./aeroplane";
import { greatest, type Extreme } from "./search";

/** Steady straight flight up or down. */
export interface Path {
  readonly speed: number;
  /** Of the path over the horizon, rad. */
  readonly angle: number;
  /** Upward and forward parts of the speed, m/s. */
  readonly rate: number;
  readonly forward: number;
  /** Lift over weight: the cosine of the angle. */
  readonly loadFactor: number;
  /** Thrust holds more than weight and drag: straight up, and still gaining speed. */
  readonly vertical: boolean;
}

/**
 * The path a thrust (N) holds at a speed: T − D = W sin γ with the drag at the lift W cos γ, so steep paths are right too. Undefined
 * where the drag isn't known, or is more than a vertical dive needs.
 */
export function steadyPath(aeroplane: Aeroplane, speed: number, thrust: number): Path | undefined {
  const weight = weightOf(aeroplane);
  const level = aeroplane.drag(speed);
  if (level === undefined || !(weight > 0)) return undefined;
  const residual = (sine: number) => (thrust - (aeroplane.drag(speed, Math.sqrt(Math.max(0, 1 - sine * sine))) ?? NaN)) / weight - sine;
  if (thrust > weight && residual(1) >= 0) return pathOf(speed, 1, true);
  // Carrying less, drag is mostly less: the sine lies between that of the level drag and that of none.
  const shallow = (thrust - level) / weight;
  const high = Math.min(1, thrust / weight);
  const low = shallow > -1 && residual(shallow) >= 0 ? shallow : Math.max(-1, shallow - 0.5);
  const sine = bracketedRoot(residual, low, high, 1e-13);
  return sine !== undefined && Number.isFinite(residual(sine)) ? pathOf(speed, sine, false) : undefined;
}

function pathOf(speed: number, sine: number, vertical: boolean): Path {
  const cosine = Math.sqrt(1 - sine * sine);
  return { speed, angle: Math.asin(sine), rate: speed * sine, forward: speed * cosine, loadFactor: cosine, vertical };
}

/** At full throttle; undefined without a motor. */
export function climbAt(aeroplane: Aeroplane, speed: number): Path | undefined {
  const thrust = aeroplane.thrust?.(speed);
  return thrust === undefined ? undefined : steadyPath(aeroplane, speed, thrust);
}

/** With the motors off, idle propellers dragging. */
export function glideAt(aeroplane: Aeroplane, speed: number): Path | undefined {
  const drag = aeroplane.idleDrag ? aeroplane.idleDrag(speed) : 0;
  return drag === undefined ? undefined : steadyPath(aeroplane, speed, -drag);
}

export interface BestPath extends Path {
  /** Set where the best lies on an end of the speeds searched; `low`: it is held by the stall. */
  readonly end?: Extreme["end"];
}

type PathAt = (aeroplane: Aeroplane, speed: number) => Path | undefined;

const best = (at: PathAt, aeroplane: Aeroplane, of: (path: Path) => number): BestPath | undefined => {
  const found = greatest((speed) => { const path = at(aeroplane, speed); return path && of(path); }, ...speedsOf(aeroplane));
  const path = found && at(aeroplane, found.at);
  return path && { ...path, ...(found.end && { end: found.end }) };
};

/** Fastest gain of height at full throttle; a negative rate is the least loss of one that can't climb. */
export const fastestClimb = (aeroplane: Aeroplane): BestPath | undefined => best(climbAt, aeroplane, (path) => path.rate);

/** Most height for the way at full throttle. Where it goes straight up at more speeds than one, the fastest of them. */
export const steepestClimb = (aeroplane: Aeroplane): BestPath | undefined =>
  best(climbAt, aeroplane, (path) => (path.vertical ? Math.PI / 2 + path.speed : path.angle));

/** Farthest glide for the height in still air; its ratio is `glideRatio`. */
export const flattestGlide = (aeroplane: Aeroplane): BestPath | undefined => best(glideAt, aeroplane, (path) => path.angle);

/** Slowest loss of height with the motors off; its rate is negative. */
export const leastSink = (aeroplane: Aeroplane): BestPath | undefined => best(glideAt, aeroplane, (path) => path.rate);

/** Way over height of a descending path; undefined of one that doesn't descend. */
export const glideRatio = ({ rate, forward }: Path): number | undefined => (rate < 0 ? forward / -rate : undefined);
