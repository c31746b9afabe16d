import type { Vec3 } from "../../model/design/geometry";
import { bracketedRoot } from "../root";
import { lateralBalance, type LateralBalance, type LateralFrame, type Way } from "./balance";
import { plantLoads, together, type Contribution, type Plant } from "./plant";

export interface Asymmetry {
  readonly plants: readonly Plant[];
  /** m */
  readonly balance: Vec3;
  /** The frame at a speed with some powerplants dead: derivatives change with lift and slipstream. */
  readonly frame: (speed: number, dead: readonly string[]) => LateralFrame | undefined;
  /** Of the design's x axis to the flight, nose up, rad; 0 when absent. */
  readonly angle?: (speed: number) => number;
}

export interface Held extends LateralBalance {
  readonly speed: number;
  readonly contributions: readonly Contribution[];
}

/** The balance at a speed with some powerplants dead and the rest at full throttle; none dead: the trim against torque. */
export function heldAt({ plants, balance, frame, angle }: Asymmetry, dead: readonly string[], speed: number, way?: Way): Held | undefined {
  const contributions = plantLoads(plants, dead, balance, speed, angle?.(speed));
  const at = contributions && frame(speed, dead);
  const held = at && lateralBalance(at, together(contributions), speed, way);
  return held && Number.isFinite(held.use) ? { ...held, speed, contributions } : undefined;
}

export interface ControlSpeed {
  /** Lowest speed from which up the controls hold it straight, m/s. */
  readonly speed: number;
  /** The balance there. */
  readonly held: Held;
  /** It is held down to the slowest speed asked for: the true one is lower. */
  readonly below?: true;
}

const places = 20;

/** How far about a control speed close by another is looked for first, as a share. */
const vicinity = 0.01;

/** Speeds at which a search looks first: who else needs some takes of these, since they are known. */
export const lookedAt = (low: number, high: number): number[] =>
  Array.from({ length: places + 1 }, (_, i) => (i === 0 ? low : i === places ? high : low * (high / low) ** (i / places)));

/**
 * The minimum control speed in steady flight, with rudder, ailerons, sideslip and bank each within its limit and live powerplants at full
 * throttle (after 14 CFR 23.149, whose speed also holds a sudden failure). Searched from `high`, or the fastest speed known below it, down
 * to `low`; undefined where it can't be held at the fastest either. `near`: that of an aircraft much like it, to look about first.
 */
export function minimumControlSpeed(asymmetry: Asymmetry, dead: readonly string[], low: number, high: number, near?: ControlSpeed): ControlSpeed | undefined {
  if (!(low > 0 && high > low)) return undefined;
  const over = (speed: number) => { const held = heldAt(asymmetry, dead, speed); return held ? held.use - 1 : NaN; };
  const result = (speed: number, below: boolean): ControlSpeed | undefined => {
    const held = heldAt(asymmetry, dead, speed);
    return held && { speed, held, ...(below && { below: true as const }) };
  };
  const close = near && !near.below ? bracketedRoot(over, near.speed * (1 - vicinity), near.speed * (1 + vicinity), 1e-9 * near.speed) : undefined;
  if (close !== undefined) return result(close, false);
  let held: number | undefined;
  for (const speed of lookedAt(low, high).reverse()) {
    const use = over(speed);
    if (held === undefined) {
      if (use > 0) return undefined;
      if (use <= 0) held = speed;
      continue;
    }
    if (Number.isNaN(use)) return result(held, true);
    if (use > 0) {
      const root = bracketedRoot(over, speed, held, 1e-9 * held);
      return root === undefined ? undefined : result(root, false);
    }
    held = speed;
  }
  return held === undefined ? undefined : result(held, true);
}
