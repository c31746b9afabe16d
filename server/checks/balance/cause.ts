import type { Place } from "../../../shared/finding";
import type { Subject } from "../check";
import type { Judged } from "../judge";
import { nominal } from "../readiness";
import { packs } from "../solve/balance";
import type { Movable } from "../solve/movable";

/** Loadings that are mended at one place. */
export interface Cause {
  readonly place: Place;
  /** The pack that may be moved there. */
  readonly pack?: Movable;
  readonly found: readonly Judged[];
}

/** Where loadings that balance badly can be mended: at the place of the heaviest pack aboard, else the design as a whole. */
export function causesOf(subject: Subject, found: readonly Judged[]): Cause[] {
  const movers = packs(subject);
  const causes = new Map<string, { place: Place; pack?: Movable; found: Judged[] }>();
  for (const one of found) {
    const pack = movers.find(({ weights }) => weights.has(one.set));
    const place = pack?.place ?? heaviest(subject, one);
    const key = `${place.start} ${place.end}`;
    const known = causes.get(key);
    if (known) known.found.push(one);
    else causes.set(key, { place, pack, found: [one] });
  }
  return [...causes.values()];
}

/** The place of the heaviest battery, though it is worked out. */
function heaviest({ places }: Subject, { set }: Judged): Place {
  const batteries = nominal(set).loads.filter(({ kind }) => kind === "battery");
  const [first] = batteries.sort((a, b) => (b.weight ?? 0) - (a.weight ?? 0));
  return first ? places.part(set, first.path, "at") : places.whole();
}
