/** Reynolds numbers that polars are worked out at; between them it is read off, outside the ends hold. */
export const reynoldsGrid: readonly number[] = [40e3, 60e3, 100e3, 150e3, 200e3, 400e3, 800e3, 1.6e6, 3e6];

export interface Between {
  /** Places in the list; the same twice outside it. */
  readonly low: number;
  readonly high: number;
  /** How far from one to the other, 0 to 1, in the logarithm. */
  readonly share: number;
}

/** Where a Reynolds number lies in a rising list of some. */
export function between(list: readonly number[], reynolds: number): Between {
  const last = list.length - 1;
  const high = list.findIndex((one) => one >= reynolds);
  if (high < 0) return { low: last, high: last, share: 0 };
  if (high === 0 || list[high] === reynolds) return { low: high, high, share: 0 };
  return { low: high - 1, high, share: shareOf(list[high - 1], list[high], reynolds) };
}

export const shareOf = (low: number, high: number, reynolds: number): number =>
  low === high ? 0 : Math.min(1, Math.max(0, Math.log(reynolds / low) / Math.log(high / low)));
