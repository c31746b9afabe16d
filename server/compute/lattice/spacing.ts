import type { Chain } from "./chains";

/** Strips per metre at a distance. */
export type Density = (at: number) => number;

/** Near a root on the plane of symmetry or a kink strips grow no closer than this share of the chain allows. */
const blunt = 0.03;

/**
 * Strips per metre along a chain, `count` in all: at a free end as the angle of a cosine, in which circulation is smooth;
 * closer also at the root and at kinks in plan, where it is not.
 */
export function chainDensity(chain: Chain, count: number): Density {
  const { length, free, kinks } = chain;
  const shape = (at: number) => {
    const end = (share: number, isFree: boolean) => 1 / Math.sqrt(Math.max(isFree ? share : share + blunt, 1e-12));
    let bump = 1;
    for (const kink of kinks) bump = Math.max(bump, (Math.abs(at - kink.at) / length + blunt) ** (-kink.strength / 2));
    return bump * end(at / length, free[0]) * end(1 - at / length, free[1]);
  };
  const { total } = accumulate(shape, 0, length);
  return (at) => (count * shape(at)) / total;
}

/** Steps of the integrals below. */
const steps = 96;

/** The integral of a density from the start of a stretch, and its inverse. */
export interface Accumulated {
  readonly total: number;
  readonly sumTo: (at: number) => number;
  readonly place: (sum: number) => number;
}

/** Points of the integral lie closer at both ends, where a density may grow without bound. */
export function accumulate(density: Density, from: number, to: number): Accumulated {
  const half = (to - from) / 2;
  const sums = new Float64Array(steps + 1);
  for (let i = 0; i < steps; i++) {
    const angle = (Math.PI * (i + 0.5)) / steps;
    sums[i + 1] = sums[i] + density(from + half * (1 - Math.cos(angle))) * half * Math.sin(angle) * (Math.PI / steps);
  }
  const total = sums[steps];
  return {
    total,
    sumTo: (at) => {
      const step = (Math.acos(Math.max(-1, Math.min(1, 1 - (at - from) / half))) * steps) / Math.PI;
      const i = Math.min(steps - 1, Math.floor(step));
      return sums[i] + (step - i) * (sums[i + 1] - sums[i]);
    },
    place: (sum) => {
      if (sum >= total) return to;
      let i = 1;
      while (i < steps && sums[i] < sum) i++;
      const part = (sum - sums[i - 1]) / (sums[i] - sums[i - 1]);
      return from + half * (1 - Math.cos((Math.PI * (i - 1 + Math.max(0, part))) / steps));
    },
  };
}
