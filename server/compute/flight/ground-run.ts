import { standardGravity } from "../constants";
import { inducedNearGround } from "./ground-effect";

export type Ground = "hard" | "turf" | "soft_turf" | "wet_grass";

/**
 * Rolling friction over load, wheels free and braked: D. P. Raymer, Aircraft Design, table 17.1, full-size wheels (from memory, medium).
 * Small wheels in grass have more: twice on turf is common practice, no source. Model aircraft mostly have no brakes.
 */
export const rollingFriction: Readonly<Record<Ground, { readonly free: number; readonly braked: number }>> = {
  hard: { free: 0.04, braked: 0.4 },
  turf: { free: 0.05, braked: 0.4 },
  soft_turf: { free: 0.07, braked: 0.2 },
  wet_grass: { free: 0.08, braked: 0.2 },
};

/** Forces of the air at the attitude of the ground run, N, over airspeed. */
export interface GroundAir {
  readonly drag: (speed: number) => number | undefined;
  readonly lift: (speed: number) => number | undefined;
}

export interface GroundWing {
  readonly density: number;
  /** m² */
  readonly area: number;
  /** Coefficients on it: lift as it rolls, drag without the induced part, induced drag at that lift far from the ground. */
  readonly lift: number;
  readonly parasite: number;
  readonly induced: number;
  /** Height of the wing over its span as it rolls. */
  readonly height: number;
  /** Share of the induced drag left near the ground; the elliptic image when absent. */
  readonly groundFactor?: (height: number) => number;
}

/** Lift in the run is not raised by the ground; the gain is small at the angles of a run. */
export function groundAir({ density, area, lift, parasite, induced, height, groundFactor = inducedNearGround }: GroundWing): GroundAir {
  const pressure = (speed: number) => (density * speed ** 2 * area) / 2;
  const drag = parasite + induced * groundFactor(height);
  return { drag: (speed) => pressure(speed) * drag, lift: (speed) => pressure(speed) * lift };
}

export interface Roll extends GroundAir {
  /** kg */
  readonly mass: number;
  /** Of the wheels over their load. */
  readonly friction: number;
  /** N over airspeed; none when absent. */
  readonly thrust?: (speed: number) => number | undefined;
  /** Against the run, m/s; negative from behind. */
  readonly headWind?: number;
}

export interface Run {
  /** m, s */
  readonly distance: number;
  readonly time: number;
}

/** It gains (or loses) no more speed here, m/s of airspeed. */
export interface Stuck {
  readonly stuckAt: number;
}

/** Net forward force while rolling, N. The wheels carry what the lift does not. */
export function rollingForce({ mass, friction, thrust, drag, lift }: Roll, airspeed: number): number | undefined {
  const [t, d, l] = [thrust ? thrust(airspeed) : 0, drag(airspeed), lift(airspeed)];
  if (t === undefined || d === undefined || l === undefined) return undefined;
  return t - d - friction * Math.max(0, mass * standardGravity - l);
}

/** From standing to an airspeed. Level ground; turning to the nose-up attitude is left out. Undefined where a force is unknown. */
export function takeoffRun(roll: Roll, liftOff: number): Run | Stuck | undefined {
  return between(roll, 0, liftOff - (roll.headWind ?? 0), 1);
}

/** From an airspeed to standing. */
export function landingRun(roll: Roll, touchdown: number): Run | Stuck | undefined {
  return between(roll, Math.max(0, touchdown - (roll.headWind ?? 0)), 0, -1);
}

/** Enough that runs are within 1e-6 of an exact integral where thrust is smooth. */
const steps = 100;

/** ∫ m V/F dV and ∫ m/F dV over ground speed, by Simpson's rule. */
function between(roll: Roll, from: number, to: number, sense: 1 | -1): Run | Stuck | undefined {
  if (!Number.isFinite(to) || !Number.isFinite(from)) return undefined;
  if ((to - from) * sense <= 0) return { distance: 0, time: 0 };
  let [distance, time] = [0, 0];
  for (let i = 0; i <= steps; i++) {
    const speed = from + ((to - from) * i) / steps;
    const airspeed = speed + (roll.headWind ?? 0);
    const force = rollingForce(roll, airspeed);
    if (force === undefined || Number.isNaN(force)) return undefined;
    if (force * sense <= 0) return { stuckAt: airspeed };
    const share = ((i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * (to - from)) / (3 * steps);
    time += (share * roll.mass) / force;
    distance += (share * roll.mass * speed) / force;
  }
  return { distance, time };
}

/** Speeds of handbook practice over the stall: leaving the ground 1.2, approach 1.3 (14 CFR 23), touching down 1.15 (J. D. Anderson, Aircraft Performance and Design, ch. 6; from memory). */
export const overStall = { liftOff: 1.2, approach: 1.3, touchdown: 1.15 } as const;
