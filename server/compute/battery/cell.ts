import type { Chemistry } from "../../model/design/power";

/**
 * How charged: just charged, half charged (`nominal`), or a share of the charge, 0 to 1. A label's volts are the mean of
 * a discharge under load; sag is reckoned apart here, so the nominal case starts from the resting volts at half charge.
 */
export type ChargeState = "full" | "nominal" | number;

interface Cell {
  /** Resting volts at charge 1, 0.9 … 0. */
  readonly rest: readonly number[];
  /** Resistance × capacity of one cell, ohm ampere second. */
  readonly resistanceCapacity: number;
}

const milliohmHours = (value: number): number => (value / 1000) * 3600;

/**
 * Lithium polymer: the resting-voltage table in wide use in hobby electronics, and 12 mohm Ah (range 8 to 25; twice that cold
 * or worn). All of it, and the rows of the other chemistries: common practice, no source.
 */
const cells: Readonly<Record<Chemistry, Cell>> = {
  lipo: {
    rest: [4.2, 4.11, 4.02, 3.95, 3.87, 3.84, 3.8, 3.77, 3.73, 3.69, 3.27],
    resistanceCapacity: milliohmHours(12),
  },
  lihv: {
    rest: [4.35, 4.24, 4.13, 4.03, 3.94, 3.87, 3.82, 3.78, 3.74, 3.69, 3.27],
    resistanceCapacity: milliohmHours(12),
  },
  liion: {
    rest: [4.2, 4.06, 3.97, 3.88, 3.79, 3.69, 3.6, 3.52, 3.43, 3.3, 2.8],
    resistanceCapacity: milliohmHours(75),
  },
  life: {
    rest: [3.5, 3.34, 3.33, 3.32, 3.31, 3.3, 3.29, 3.27, 3.24, 3.19, 2.5],
    resistanceCapacity: milliohmHours(20),
  },
  nimh: {
    rest: [1.42, 1.35, 1.32, 1.3, 1.29, 1.28, 1.27, 1.26, 1.24, 1.2, 1],
    resistanceCapacity: milliohmHours(30),
  },
};

/** Open-circuit volts of one cell. A charge outside 0 to 1 counts as the nearer end. */
export function cellVolts(chemistry: Chemistry, state: ChargeState): number {
  const { rest } = cells[chemistry];
  const charge = state === "full" ? 1 : state === "nominal" ? 0.5 : Math.min(1, Math.max(0, state));
  const place = (1 - charge) * (rest.length - 1);
  const i = Math.min(rest.length - 2, Math.floor(place));
  return rest[i] + (place - i) * (rest[i + 1] - rest[i]);
}

/** Usual resistance of cells in series, each of this capacity (A s, cells in parallel taken together), ohm. */
export function usualResistance(chemistry: Chemistry, series: number, capacity: number): number {
  return (series * cells[chemistry].resistanceCapacity) / capacity;
}
