import { densityAltitude, tropopauseDensity as thinnest } from "../atmosphere/atmosphere";
import { bracketedRoot } from "../root";
import type { Aeroplane } from "./aeroplane";
import { fastestClimb } from "./path";

export interface Ceiling {
  /** kg/m³ */
  readonly density: number;
  /** Where the standard air has that density, m. */
  readonly altitude: number;
  /** It still climbs in the thinnest air asked for: the ceiling is above. */
  readonly above: boolean;
}

/** How far about a ceiling close by another is looked for first, as a share of the density. */
const vicinity = 0.01;

/**
 * The air in which the best climb has faded to `rate` (m/s; 0: the absolute ceiling; 0.508, 100 ft/min: the service ceiling of full-size
 * practice). `at` gives the aircraft in air of a density; what thrust and packs do there is its business. Undefined where the climb isn't
 * known, or is less than that in the `from` air already. `near`: that of an aircraft much like it, to look about first.
 */
export function ceiling(at: (density: number) => Aeroplane | undefined, from: number, rate = 0, near?: Ceiling): Ceiling | undefined {
  const spare = (density: number) => {
    const aeroplane = at(density);
    const climb = aeroplane && fastestClimb(aeroplane);
    return climb ? climb.rate - rate : NaN;
  };
  const of = (density: number, above: boolean): Ceiling => ({ density, altitude: densityAltitude(density), above });
  const close = near && !near.above ? bracketedRoot(spare, near.density * (1 - vicinity), Math.min(from, near.density * (1 + vicinity)), 1e-6) : undefined;
  if (close !== undefined && Number.isFinite(spare(close))) return of(close, false);
  if (!(from > thinnest && spare(from) >= 0)) return undefined;
  if (spare(thinnest) >= 0) return of(thinnest, true);
  const density = bracketedRoot(spare, thinnest, from, 1e-6);
  return density !== undefined && Number.isFinite(spare(density)) ? of(density, false) : undefined;
}
