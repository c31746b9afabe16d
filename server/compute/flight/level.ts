import { speedsOf, type Aeroplane } from "./aeroplane";
import { bracketedRoot } from "../root";
import { greatest, highestFall, least, type Extreme } from "./search";

/** Highest level speed at full throttle, m/s; undefined without thrust, or where thrust meets drag nowhere above the stall. `near`: to look about first. */
export function topSpeed(aeroplane: Aeroplane, near?: number): number | undefined {
  const [low, high] = speedsOf(aeroplane);
  const spare = (speed: number) => surplus(aeroplane, speed);
  const close = near === undefined ? undefined : bracketedRoot((speed) => spare(speed) ?? NaN, Math.max(low, near * 0.98), Math.min(high, near * 1.02), near * 1e-10);
  return close ?? highestFall(spare, low, high);
}

/** Thrust at full throttle less level drag, N. */
export function surplus({ thrust, drag }: Aeroplane, speed: number): number | undefined {
  const [t, d] = [thrust?.(speed), drag(speed)];
  return t === undefined || d === undefined ? undefined : t - d;
}

/** Speed of least level drag, N. On the end `low` the true one lies below the stall and can't be flown. */
export function leastDrag(aeroplane: Aeroplane): Extreme | undefined {
  return least((speed) => aeroplane.drag(speed), ...speedsOf(aeroplane));
}

/** Speed of least power of drag, W, motor and propeller left aside. */
export function leastPower(aeroplane: Aeroplane): Extreme | undefined {
  return least((speed) => times(aeroplane.drag(speed), speed), ...speedsOf(aeroplane));
}

/** What the packs give in level flight, and `others` (receiver, servos, payload), W; undefined where thrust does not reach the drag. */
export function levelPower(aeroplane: Aeroplane, speed: number, others = 0): number | undefined {
  const drag = aeroplane.drag(speed);
  const most = aeroplane.thrust?.(speed);
  if (drag === undefined || most === undefined || drag > most) return undefined;
  const power = aeroplane.electricPower?.(drag, speed);
  return power === undefined ? undefined : power + others;
}

/** Level speed at which the packs last longest; the value is what they give there, W. */
export function bestEndurance(aeroplane: Aeroplane, others = 0): Extreme | undefined {
  return least((speed) => levelPower(aeroplane, speed, others), ...speedsOf(aeroplane));
}

/**
 * Level speed at which the packs carry farthest; the value is the way over the ground for their energy, m/J. A head wind (m/s)
 * makes it faster.
 */
export function bestRange(aeroplane: Aeroplane, others = 0, headWind = 0): Extreme | undefined {
  return greatest((speed) => {
    const power = levelPower(aeroplane, speed, others);
    return power !== undefined && power > 0 && speed > headWind ? (speed - headWind) / power : undefined;
  }, ...speedsOf(aeroplane));
}

const times = (a: number | undefined, b: number): number | undefined => (a === undefined ? undefined : a * b);
