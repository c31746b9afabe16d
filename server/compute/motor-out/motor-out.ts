import { smoothCurve } from "../curve";
import { speedsOf, type Aeroplane } from "../flight/aeroplane";
import { topSpeed } from "../flight/level";
import { fastestClimb, steadyPath, type BestPath } from "../flight/path";
import { heldAt, lookedAt, minimumControlSpeed, type Asymmetry, type ControlSpeed, type Held } from "./minimum-control-speed";
import { together, type Cause } from "./plant";

export interface MotorOut {
  /** The dead powerplant. */
  readonly path: string;
  /** Absent where it can't be held straight up to the fastest speed searched, or isn't known. */
  readonly control?: ControlSpeed;
  /** At 1.2 × stall, where a pilot leaves the ground: without sideslip where the controls reach that far, else with the least of them. */
  readonly atLiftOff?: Held;
  /** The best there is with the rest at full throttle, no slower than it can be held straight; a negative rate sinks. */
  readonly climb?: BestPath;
}

/** Slowest speed for which control is asked, over the stall. */
const slowest = 0.5;

/** Between which control is asked for: beyond the top speed propellers brake, and no failure is held there. */
export const controlledSpeeds = (aeroplane: Aeroplane): readonly [low: number, high: number] =>
  [slowest * aeroplane.stallSpeed, topSpeed(aeroplane) ?? speedsOf(aeroplane)[1]];

/**
 * One powerplant dead. `aeroplane` gives weight, stall and drag; thrust is that of the live ones, forward, less the dead one's drag. The
 * drag of rudder, ailerons and sideslip is `trimDrag` (N, of a balance), none when absent. `near`: that of the same aircraft with nearly the
 * same weight, and its stall speed: it climbs best at its speed, grown with the stall's, to first order.
 */
export function motorOut(
  asymmetry: Asymmetry, aeroplane: Aeroplane, path: string, trimDrag?: (held: Held) => number, near?: MotorOut & { readonly stallSpeed: number },
): MotorOut {
  const { stallSpeed } = aeroplane;
  const [slow, high] = controlledSpeeds(aeroplane);
  const control = minimumControlSpeed(asymmetry, [path], slow, high, near?.control);
  const atLiftOff = flown(asymmetry, path, 1.2 * stallSpeed);
  const low = Math.max(stallSpeed, control?.speed ?? Infinity);
  const best: Pick<BestPath, "speed" | "end"> | undefined = near?.climb ? { speed: Math.max(low, (near.climb.speed * stallSpeed) / near.stallSpeed) }
    : low < high ? fastestClimb(crippled(asymmetry, aeroplane, path, [low, ...lookedAt(slow, high).filter((speed) => speed > low)], trimDrag)) : undefined;
  const climb = best && crippledClimb(asymmetry, aeroplane, path, best.speed, trimDrag);
  return { path, ...(control && { control }), ...(atLiftOff && { atLiftOff }), ...(climb && { climb: { ...climb, ...(best.end && { end: best.end }) } }) };
}

/** At one speed. */
function crippledClimb(asymmetry: Asymmetry, aeroplane: Aeroplane, path: string, speed: number, trimDrag?: (held: Held) => number): BestPath | undefined {
  const thrust = leftThrust(asymmetry, path, speed);
  const held = trimDrag && flown(asymmetry, path, speed);
  return thrust === undefined || (trimDrag && !held) ? undefined : steadyPath(aeroplane, speed, thrust - (held && trimDrag ? trimDrag(held) : 0));
}

/** The aircraft on its live powerplants, over the speeds at which it can be held straight: smooth between those that are looked at. */
function crippled(
  asymmetry: Asymmetry, aeroplane: Aeroplane, path: string, looked: readonly number[], trimDrag?: (held: Held) => number,
): Aeroplane {
  const searched = [looked[0], looked[looked.length - 1]] as const;
  const points = looked.flatMap((speed) => {
    const thrust = leftThrust(asymmetry, path, speed);
    const held = trimDrag && flown(asymmetry, path, speed);
    return thrust === undefined || (trimDrag && !held) ? [] : [{ speed, thrust, extra: held && trimDrag ? trimDrag(held) : 0 }];
  });
  if (points.length < 3) return { ...aeroplane, drag: () => undefined, thrust: () => undefined, searched };
  const speeds = points.map(({ speed }) => speed);
  const [thrust, extra] = [smoothCurve(speeds, points.map((one) => one.thrust)), smoothCurve(speeds, points.map((one) => one.extra))];
  const known = (speed: number) => speed >= speeds[0] && speed <= speeds[speeds.length - 1];
  return {
    ...aeroplane, searched,
    thrust: (speed) => (known(speed) ? thrust(speed) : undefined),
    drag: (speed, loadFactor) => {
      const clean = known(speed) ? aeroplane.drag(speed, loadFactor) : undefined;
      return clean === undefined ? undefined : clean + extra(speed);
    },
  };
}

/** As a pilot would: without sideslip where the controls reach that far, else with the least of them. */
function flown(asymmetry: Asymmetry, path: string, speed: number): Held | undefined {
  const straight = heldAt(asymmetry, [path], speed, "no sideslip");
  return straight && straight.use <= 1 ? straight : heldAt(asymmetry, [path], speed);
}

/** Forward thrust of the live ones less the drag of the dead, N. */
function leftThrust({ plants }: Asymmetry, dead: string, speed: number): number | undefined {
  let sum = 0;
  for (const plant of plants) {
    const part = plant.path === dead ? plant.deadDrag(speed) : plant.running(speed, [dead])?.thrust;
    if (part === undefined) return undefined;
    sum += plant.path === dead ? -part : -part * plant.thrustAxis[0];
  }
  return sum;
}

export interface Critical {
  /** The powerplants whose failure asks for most; none where all ask for the same. */
  readonly paths: readonly string[];
  /**
   * Why: what each cause gives in yaw and roll towards the dead side, N m, more than in the mildest failure at the same speed;
   * largest first.
   */
  readonly because: readonly { readonly cause: Cause; readonly yaw: number; readonly roll: number }[];
  /** m/s, where they were compared: 1.2 × stall. */
  readonly speed: number;
}

/** Failures this close, as a share, ask for the same. */
const same = 1e-3;

/** Which of several powerplants is critical: by the share of the controls that its failure takes. Undefined where one can't be balanced. */
export function criticalMotor(asymmetry: Asymmetry, stallSpeed: number): Critical | undefined {
  const speed = 1.2 * stallSpeed;
  const each = asymmetry.plants.map(({ path }) => ({ path, held: heldAt(asymmetry, [path], speed) }));
  const known = each.flatMap(({ path, held }) => (held ? [{ path, held }] : []));
  if (each.length < 2 || known.length < each.length) return undefined;
  const worst = known.reduce((a, b) => (b.held.use > a.held.use ? b : a));
  const mildest = known.reduce((a, b) => (b.held.use < a.held.use ? b : a));
  const alike = (use: number) => use >= worst.held.use * (1 - same);
  if (alike(mildest.held.use)) return { paths: [], speed, because: [] };
  const [hard, soft] = [causes(worst.held), causes(mildest.held)];
  const because = [...new Set([...hard.keys(), ...soft.keys()])].map((cause) => {
    const [a, b] = [hard.get(cause), soft.get(cause)];
    return { cause, yaw: (a?.yaw ?? 0) - (b?.yaw ?? 0), roll: (a?.roll ?? 0) - (b?.roll ?? 0) };
  });
  const size = (one: { readonly yaw: number; readonly roll: number }) => Math.hypot(one.yaw, one.roll);
  const paths = known.filter(({ held }) => alike(held.use)).map(({ path }) => path);
  return { paths, speed, because: because.filter((one) => size(one) > 0).sort((a, b) => size(b) - size(a)) };
}

/** By cause, into the side to which the aircraft turns. */
function causes({ contributions }: Held): Map<Cause, { readonly yaw: number; readonly roll: number }> {
  const way = Math.sign(together(contributions).yaw) || 1;
  const sums = new Map<Cause, { readonly yaw: number; readonly roll: number }>();
  for (const { cause, yaw, roll } of contributions) {
    const before = sums.get(cause) ?? { yaw: 0, roll: 0 };
    sums.set(cause, { yaw: before.yaw + way * yaw, roll: before.roll + way * roll });
  }
  return sums;
}
