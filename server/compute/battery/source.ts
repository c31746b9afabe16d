import type { Pack, Source } from "../../model/design/power";
import { cellVolts, usualResistance, type ChargeState } from "./cell";

/** What a computation lacks, as the path of the property from the powerplant or battery. */
export interface Missing<What extends string = string> {
  readonly missing: What;
}

export type SourceMissing = Missing<"packs" | "cells" | "capacity">;

/** A pack, or several wired together, seen from its terminals: a voltage behind a resistance. */
export interface EquivalentSource {
  /** Open-circuit V. */
  readonly emf: { readonly full: number; readonly nominal: number };
  /** ohm */
  readonly resistance: number;
  /** A s: the smallest in series, all together in parallel. */
  readonly capacity: number;
  /** A s a flight may use. */
  readonly usableCharge: number;
  /** A that no pack's C rating forbids, as printed and fully charged; undefined if one has none. */
  readonly maxCurrent?: number;
  /** Is any pack's resistance the usual one of its kind? */
  readonly assumedResistance: boolean;
  readonly packs: readonly PackSource[];
}

export interface PackSource {
  readonly path: string;
  readonly resistance: number;
  readonly maxCurrent?: number;
  readonly emf: (state: ChargeState) => number;
}

/** A pack without resistance would feed the next one without bound. */
const leastResistance = 1e-6;

/**
 * A source as one voltage and one resistance. In parallel by Thévenin's theorem, unlike packs too; what they then push
 * through each other shows in `packCurrents`.
 */
export function equivalentSource(source: Source): EquivalentSource | SourceMissing {
  if (source.packs.length === 0) return { missing: "packs" };
  for (const { cells, capacity } of source.packs) {
    if (!(cells > 0)) return { missing: "cells" };
    if (!(capacity > 0 && Number.isFinite(capacity))) return { missing: "capacity" };
  }
  const packs = source.packs.map(packSource);
  const usable = source.packs.map((pack) => pack.capacity * pack.usable);
  const capacities = source.packs.map((pack) => pack.capacity);
  const together = source.wired === "parallel" ? sum : least;
  return {
    emf: { full: emfOf(source.wired, packs, "full"), nominal: emfOf(source.wired, packs, "nominal") },
    resistance: source.wired === "parallel" ? 1 / sum(packs.map((p) => 1 / p.resistance)) : sum(packs.map((p) => p.resistance)),
    capacity: together(capacities),
    usableCharge: together(usable),
    maxCurrent: maxCurrentOf(source.wired, packs),
    assumedResistance: source.packs.some((pack) => pack.resistance === undefined),
    packs,
  };
}

/** Open-circuit V of the packs together. */
export function emfOf(wired: Source["wired"], packs: readonly PackSource[], state: ChargeState): number {
  if (wired !== "parallel") return sum(packs.map((p) => p.emf(state)));
  return sum(packs.map((p) => p.emf(state) / p.resistance)) / sum(packs.map((p) => 1 / p.resistance));
}

/** Each pack's share (A) when the source gives `current`; unlike packs in parallel have some even at 0. */
export function packCurrents(wired: Source["wired"], packs: readonly PackSource[], state: ChargeState, current: number): number[] {
  if (wired !== "parallel") return packs.map(() => current);
  const volts = emfOf(wired, packs, state) - current / sum(packs.map((p) => 1 / p.resistance));
  return packs.map((p) => (p.emf(state) - volts) / p.resistance);
}

function packSource(pack: Pack): PackSource {
  return {
    path: pack.path,
    resistance: Math.max(leastResistance, pack.resistance ?? usualResistance(pack.chemistry, pack.cells, pack.capacity)),
    maxCurrent: pack.cRating === undefined ? undefined : (pack.cRating * pack.capacity) / 3600,
    emf: (state) => pack.cells * cellVolts(pack.chemistry, state),
  };
}

function maxCurrentOf(wired: Source["wired"], packs: readonly PackSource[]): number | undefined {
  const limits = packs.map((p) => p.maxCurrent);
  if (!limits.every((limit) => limit !== undefined)) return undefined;
  if (wired !== "parallel") return least(limits);
  const lowestVolts = Math.max(...packs.map((p, i) => p.emf("full") - limits[i] * p.resistance));
  return Math.max(0, sum(packs.map((p) => (p.emf("full") - lowestVolts) / p.resistance)));
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const least = (values: readonly number[]): number => Math.min(...values);
