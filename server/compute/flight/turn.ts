import { standardGravity } from "../constants";
import { bracketedRoot } from "../root";
import { liftLimit, speedsOf, type Aeroplane } from "./aeroplane";
import { least } from "./search";

export interface Turn {
  readonly speed: number;
  /** rad */
  readonly bank: number;
  readonly loadFactor: number;
  /** m; Infinity at no bank. */
  readonly radius: number;
  /** rad/s */
  readonly rate: number;
}

/** A level turn: n = 1/cos φ, R = V²/(g tan φ) (J. D. Anderson, Introduction to Flight, ch. 6). Undefined at 90° of bank. */
export function levelTurn(speed: number, bank: number): Turn | undefined {
  const tangent = Math.tan(Math.abs(bank));
  if (!(speed > 0 && Math.abs(bank) < Math.PI / 2)) return undefined;
  return { speed, bank, loadFactor: 1 / Math.cos(bank), radius: speed ** 2 / (standardGravity * tangent), rate: (standardGravity * tangent) / speed };
}

/** The turn a pilot plans on: 45° of bank at 1.3 × stall, where lift is left for 1.69 of the 1.41 g it takes. */
export const plannedTurn = ({ stallSpeed }: Pick<Aeroplane, "stallSpeed">): Turn | undefined => levelTurn(1.3 * stallSpeed, Math.PI / 4);

export interface SustainedTurn extends Turn {
  /** What ends it: thrust meets drag, the stall, or the load factor allowed. */
  readonly limit: "thrust" | "lift" | "strength";
}

/** Tightest level turn at full throttle that keeps its speed; undefined where not even level flight does. */
export function sustainedTurn(aeroplane: Aeroplane, speed: number, allowed = Infinity): SustainedTurn | undefined {
  const thrust = aeroplane.thrust?.(speed);
  const lift = liftLimit(aeroplane, speed);
  const most = Math.min(lift, allowed);
  if (thrust === undefined || !(most > 1)) return undefined;
  const surplus = (n: number) => thrust - (aeroplane.drag(speed, n) ?? NaN);
  const at = (n: number, limit: SustainedTurn["limit"]) => {
    const turn = levelTurn(speed, Math.acos(1 / n));
    return turn && { ...turn, loadFactor: n, limit };
  };
  if (surplus(most) >= 0) return at(most, lift <= allowed ? "lift" : "strength");
  const n = bracketedRoot(surplus, 1, most, 1e-12);
  return n !== undefined && n > 1 && Number.isFinite(surplus(n)) ? at(n, "thrust") : undefined;
}

/** Of all speeds, the sustained turn with the smallest radius. */
export function tightestTurn(aeroplane: Aeroplane, allowed = Infinity): SustainedTurn | undefined {
  const found = least((speed) => sustainedTurn(aeroplane, speed, allowed)?.radius, ...speedsOf(aeroplane));
  return found && sustainedTurn(aeroplane, found.at, allowed);
}

/** Radius of a pull-up from level flight, R = V²/(g(n − 1)), m. Undefined at no more than 1 g. */
export function pullUpRadius(speed: number, loadFactor: number): number | undefined {
  return loadFactor > 1 ? speed ** 2 / (standardGravity * (loadFactor - 1)) : undefined;
}

/** Speed at which full lift gives just the load factor, VA = Vs √n, m/s (14 CFR 23.335(c)). */
export const manoeuvringSpeed = (stallSpeed: number, loadFactor: number): number => stallSpeed * Math.sqrt(loadFactor);
