import type { SectionShape } from "../../model/design/geometry";
import { polarsOf, type Polar, type PolarsOf } from "./polar";

/** Sections kept, and polars of each; the longest unused go first. */
const [sections, each] = [24, 32];

/** Polars remembered by shape and Reynolds number. */
export type PolarMemory = (shape: SectionShape, reynolds: number) => Polar | undefined;

export function polarMemory(): PolarMemory {
  const remembered = new Map<string, (reynolds: number) => Polar | undefined>();
  return (shape, reynolds) => kept(remembered, JSON.stringify(shape), sections, () => remembering(polarsOf(shape)))(reynolds);
}

function remembering(of: PolarsOf): PolarsOf {
  const polars = new Map<number, Polar | undefined>();
  return (reynolds) => kept(polars, reynolds, each, () => of(reynolds));
}

function kept<K, V>(map: Map<K, V>, key: K, most: number, make: () => V): V {
  const value = map.has(key) ? (map.get(key) as V) : make();
  map.delete(key);
  map.set(key, value);
  if (map.size > most) map.delete(map.keys().next().value as K);
  return value;
}
