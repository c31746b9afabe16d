import { liftLimit, weightOf, type Aeroplane } from "./aeroplane";
import type { Fed } from "./on-charge";
import { climbAt, glideAt, type Path } from "./path";
import { drain } from "../battery/store";

/** One steady piece of a flight. */
export interface Leg {
  readonly name?: string;
  /** m/s */
  readonly speed: number;
  /** Height gained a second, m/s (0 when absent), or what full throttle gives, or motors off. */
  readonly climb?: number | "full" | "glide";
  /** Of a turn, rad. */
  readonly bank?: number;
  /** How long: a time (s), a way through the air along the ground (m), or a height gained or lost (m, as a size). */
  readonly for: { readonly time: number } | { readonly distance: number } | { readonly height: number };
}

/** Why a leg can't be flown, or not to its end. */
export type LegEnd = "stall" | "thrust" | "drag unknown" | "power unknown" | "no such way" | "power" | "charge";

export interface FlownLeg {
  readonly leg: Leg;
  readonly time: number;
  readonly distance: number;
  /** Gained, m; negative lost. */
  readonly height: number;
  /** From the packs together, W. */
  readonly power: number;
  readonly stores: readonly StoreAfter[];
  readonly ended?: LegEnd;
}

export interface StoreAfter {
  /** A s taken on this leg. */
  readonly taken: number;
  /** Share of the capacity left after it. */
  readonly charge: number;
  /** Lowest under load, V. */
  readonly lowestVolts: number;
}

export interface Sortie {
  /** As far as it was flown: the last one is cut short or impossible where `ended` is set. */
  readonly legs: readonly FlownLeg[];
  readonly time: number;
  readonly distance: number;
  readonly ended?: LegEnd;
}

interface State extends Pick<Path, "rate" | "forward"> {
  readonly power: number;
}

/**
 * A flight leg by leg, on stores that start full and end at their usable charge. Each leg is steady; the changes between legs, and the
 * height that speed is worth, are left out. `others` (W) runs all the time.
 */
export function sortie(legs: readonly Leg[], aeroplane: Aeroplane, fed: readonly Fed[], others = 0): Sortie {
  const flown: FlownLeg[] = [];
  let charges = fed.map(() => 1);
  for (const leg of legs) {
    const next = fly(leg, aeroplane, fed, charges, others);
    flown.push(next);
    charges = next.stores.map(({ charge }) => charge);
    if (next.ended) break;
  }
  const sum = (of: (leg: FlownLeg) => number) => flown.reduce((total, leg) => total + of(leg), 0);
  const ended = flown.at(-1)?.ended;
  return { legs: flown, time: sum((leg) => leg.time), distance: sum((leg) => leg.distance), ...(ended && { ended }) };
}

function fly(leg: Leg, aeroplane: Aeroplane, fed: readonly Fed[], charges: readonly number[], others: number): FlownLeg {
  const state = stateOf(leg, aeroplane);
  const none = (ended: LegEnd): FlownLeg => ({
    leg, time: 0, distance: 0, height: 0, power: 0, ended,
    stores: fed.map(({ store }, i) => ({ taken: 0, charge: charges[i], lowestVolts: store.emf(charges[i]) })),
  });
  if (typeof state === "string") return none(state);
  const asked = timeOf(leg, state);
  if (asked === undefined) return none("no such way");
  const power = state.power + others;
  const run = (time: number) => fed.map(({ store, share }, i) => drain(store, share * power, time, charges[i]));
  const whole = run(asked);
  const time = Math.min(asked, ...whole.map((each) => each.time));
  const short = whole.find((each) => each.time === time && each.ended);
  const stores = (short ? run(time) : whole).map(({ taken, charge, lowestVolts }) => ({ taken, charge, lowestVolts }));
  return {
    leg, time, distance: time * state.forward, height: time * state.rate, power, stores,
    ...(short?.ended && { ended: short.ended }),
  };
}

function stateOf({ speed, climb = 0, bank = 0 }: Leg, aeroplane: Aeroplane): State | LegEnd {
  const turning = 1 / Math.cos(bank);
  if (!(Math.abs(bank) < Math.PI / 2 && liftLimit(aeroplane, speed) >= turning)) return "stall";
  const banked: Aeroplane = { ...aeroplane, drag: (v, n = 1) => aeroplane.drag(v, n * turning) };
  if (climb === "glide") {
    const path = glideAt(banked, speed);
    return path ? { ...path, power: 0 } : "drag unknown";
  }
  const most = aeroplane.thrust?.(speed);
  const path = climb === "full" ? climbAt(banked, speed) : pathAt(speed, climb);
  if (most === undefined || !path || (climb === "full" && path.rate <= 0)) return "thrust";
  const drag = banked.drag(speed, path.loadFactor);
  if (drag === undefined) return "drag unknown";
  const thrust = climb === "full" ? most : drag + (weightOf(aeroplane) * path.rate) / speed;
  if (thrust > most) return "thrust";
  const power = aeroplane.electricPower?.(Math.max(0, thrust), speed);
  return power === undefined ? "power unknown" : { rate: path.rate, forward: path.forward, power };
}

function pathAt(speed: number, rate: number): Pick<Path, "rate" | "forward" | "loadFactor"> | undefined {
  if (!(Math.abs(rate) < speed)) return undefined;
  const forward = Math.sqrt(speed ** 2 - rate ** 2);
  return { rate, forward, loadFactor: forward / speed };
}

/** Undefined where the leg never gets there. */
function timeOf({ for: length }: Leg, { rate, forward }: State): number | undefined {
  const time = "time" in length ? length.time : "distance" in length ? length.distance / forward : length.height / Math.abs(rate);
  return time >= 0 && Number.isFinite(time) ? time : undefined;
}

/** Share of the usable charge left in the store that has least of it, where the sortie ended; negative where more was taken. 1 without stores. */
export function leastUsableLeft({ legs }: Pick<Sortie, "legs">, fed: readonly Fed[]): number {
  const last = legs[legs.length - 1]?.stores ?? [];
  return Math.min(1, ...last.map(({ charge }, i) => 1 - (1 - charge) / fed[i].store.usable));
}
