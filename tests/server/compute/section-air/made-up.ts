import { polarKey, shapeKey } from "../../../../server/compute/section-air/polar-key";
import type { PolarLookup } from "../../../../server/compute/section-air/polar-shelf";
import type { Polar } from "../../../../server/compute/polar/polar";
import { summarise } from "../../../../server/compute/polar/summary";
import type { SectionShape } from "../../../../server/model/design/geometry";

const degree = Math.PI / 180;

/** A polar of plausible form, made up from a few numbers. */
export function madeUp(reynolds: number, { zeroLift = -3, slope = 6, limit = 1.2, drag = 0.01, lowest = -0.4 } = {}): Polar {
  const points = Array.from({ length: 40 }, (_, i) => {
    const angle = (i - 15) * degree;
    const straight = slope * (angle - zeroLift * degree);
    const over = Math.max(0, straight - 0.9 * limit);
    const lift = straight - over + 0.1 * limit * Math.sin(Math.min(2.2, over / (0.1 * limit)));
    return { angle, lift, drag: drag * (1 + lift * lift), moment: -0.05 };
  }).filter(({ lift }, i, all) => lift > lowest && (i < 2 || lift > all[i - 2].lift - 0.05));
  return { reynolds, ...summarise(points, false)!, points, doubts: [] };
}

/** Answers from made-up polars that differ with shape and Reynolds number, by at most the share `spread`. */
export function madeUpPolars(spread: number, seed = 1): PolarLookup {
  const known = new Map<string, Polar>();
  return (shape, reynolds) => {
    const key = polarKey(shape, reynolds);
    let polar = known.get(key);
    if (!polar) known.set(key, (polar = madeUp(reynolds, varied(key, spread, seed, isTurned(shape)))));
    return polar;
  };
}

const isTurned = (shape: SectionShape) => shape.type === "coordinates";

function varied(key: string, spread: number, seed: number, turned: boolean) {
  const by = (k: number) => 1 + spread * (hash(`${key}${seed}${k}`) - 0.5);
  return {
    zeroLift: (turned ? 3 : -3) * by(1), slope: 6 * by(2), limit: (turned ? 0.7 : 1.2) * by(3), drag: 0.01 * by(4), lowest: -0.4 * by(5),
  };
}

const hash = (text: string) => parseInt(shapeKey({ type: "coordinates", points: [...text].map((c) => [c.charCodeAt(0), 0] as const) }).slice(-8), 16) / 2 ** 32;
