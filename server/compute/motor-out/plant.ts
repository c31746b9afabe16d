import type { Vec3 } from "../../model/design/geometry";
import { along, dot, minus } from "../convex/shapes";

/** Side force (right, N), rolling (right wing down) and yawing moment (nose right) about the balance point, N m. */
export interface Lateral {
  readonly side: number;
  readonly roll: number;
  readonly yaw: number;
}

export type Cause = "thrust" | "drag" | "torque" | "descending blade" | "normal force" | "slipstream";

/** What one cause on one powerplant gives. */
export interface Contribution extends Lateral {
  readonly path: string;
  readonly cause: Cause;
}

/** A running powerplant at one speed. Absent: 0. */
export interface PlantLoad {
  /** Along the shaft, N. */
  readonly thrust: number;
  /** At the propeller, N m, as a size. */
  readonly torque?: number;
  /** How far the middle of the thrust lies to the side of the blades that go down, m: above 0 with the shaft nose up to the air. */
  readonly bladeOffset?: number;
  /** In the disc, up, N: above 0 with the shaft nose up to the air. */
  readonly normalForce?: number;
  /** What the swirl of its slipstream does to fins and tailplanes, about axes along and across the flight. */
  readonly slipstream?: Lateral;
}

/** Axes of the design: x aft, y right, z up. */
export interface Plant {
  readonly path: string;
  readonly hub: Vec3;
  /** Unit vector the thrust points along. */
  readonly thrustAxis: Vec3;
  /** Seen from behind. */
  readonly clockwise: boolean;
  /** At full throttle, at an airspeed (m/s), while others are dead; undefined where unknown. */
  readonly running: (speed: number, dead: readonly string[]) => PlantLoad | undefined;
  /** Its drag when dead, N. */
  readonly deadDrag: (speed: number) => number | undefined;
}

const cross = (a: Vec3, b: Vec3): Vec3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const times = (s: number, a: Vec3): Vec3 => [s * a[0], s * a[1], s * a[2]];

/** x aft and z up: a moment about either turns left. */
const lateral = (force: Vec3, moment: Vec3): Lateral => ({ side: force[1], roll: -moment[0] || 0, yaw: -moment[2] || 0 });

/**
 * What a running powerplant does across the plane of symmetry, cause by cause, about a balance point. Torque turns the aircraft
 * against the propeller; nose up, the blade that goes down meets more air and draws the thrust to its side: on the right of a
 * propeller that turns clockwise seen from behind.
 */
export function runningLoads(plant: Plant, balance: Vec3, speed: number, dead: readonly string[] = []): Contribution[] | undefined {
  const load = plant.running(speed, dead);
  if (!load) return undefined;
  const { thrust, torque = 0, bladeOffset = 0, normalForce = 0, slipstream } = load;
  const { thrustAxis: axis, path } = plant;
  const sense = plant.clockwise ? 1 : -1;
  const arm = minus(plant.hub, balance);
  const push = times(thrust, axis);
  const right = unit(cross(axis, [0, 0, 1]));
  const up = times(normalForce, cross(right, axis));
  const still: Vec3 = [0, 0, 0];
  return [
    { path, cause: "thrust", ...lateral(push, cross(arm, push)) },
    { path, cause: "torque", ...lateral(still, times(-sense * torque, axis)) },
    { path, cause: "descending blade", ...lateral(still, cross(times(sense * bladeOffset, right), push)) },
    { path, cause: "normal force", ...lateral(up, cross(arm, up)) },
    ...(slipstream ? [{ path, cause: "slipstream" as const, ...slipstream }] : []),
  ];
}

/** A dead one drags at its hub, along the flight, which comes from below by `angle`, rad. */
export function deadLoad(plant: Plant, balance: Vec3, speed: number, angle = 0): Contribution | undefined {
  const drag = plant.deadDrag(speed);
  if (drag === undefined) return undefined;
  const force: Vec3 = [drag * Math.cos(angle), 0, drag * Math.sin(angle)];
  return { path: plant.path, cause: "drag", ...lateral(force, cross(minus(plant.hub, balance), force)) };
}

/**
 * Of all powerplants, those in `dead` dead. Undefined where any of them is unknown. Roll and yaw about axes along and across the
 * flight, to which the design's x axis stands at `angle`, rad, nose up: thrust then lifts its side a little.
 */
export function plantLoads(plants: readonly Plant[], dead: readonly string[], balance: Vec3, speed: number, angle = 0): Contribution[] | undefined {
  const each = plants.map((plant) => (dead.includes(plant.path) ? deadLoad(plant, balance, speed, angle) : runningLoads(plant, balance, speed, dead)));
  return each.every((one) => one !== undefined) ? each.flat().map((one) => (one.cause === "slipstream" ? one : { ...one, ...turned(one, angle) })) : undefined;
}

function turned({ side, roll, yaw }: Lateral, angle: number): Lateral {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { side, roll: roll * cos + yaw * sin, yaw: yaw * cos - roll * sin };
}

/** All contributions together. */
export function together(contributions: readonly Lateral[]): Lateral {
  const sum = (of: keyof Lateral) => contributions.reduce((total, one) => total + one[of], 0);
  return { side: sum("side"), roll: sum("roll"), yaw: sum("yaw") };
}

/** A shaft straight up has no side: its blades go down nowhere. */
function unit(a: Vec3): Vec3 {
  const size = Math.sqrt(dot(a, a));
  return size > 1e-9 ? along([0, 0, 0], 1 / size, a) : [0, 0, 0];
}
