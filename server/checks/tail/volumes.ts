import type { FigureSet } from "../../figures/figure-set";
import type { Place } from "../../../shared/finding";
import type { Subject } from "../check";
import { nominal, whole } from "../readiness";

type Surface = ReturnType<typeof nominal>["surfaces"][number];

/** Where the middle of a surface's root and tip chords lies, x: enough to tell fore from aft. */
function middleOf({ halves }: Surface): number {
  const xs = halves.flatMap(({ panels }) => panels.flatMap(({ inner, outer }) => [inner, outer].map((s) => s.leadingEdge[0] + s.chord / 4)));
  return xs.reduce((sum, x) => sum + x, 0) / xs.length;
}

/** The tailplanes behind the wing. */
export function aftTailplanes(set: FigureSet): Surface[] {
  const reference = set.facts.reference;
  if (!reference) return [];
  const quarter = reference.meanChordX + reference.meanChord / 4;
  return nominal(set).surfaces.filter((surface) => surface.kind === "tailplane" && middleOf(surface) > quarter);
}

/** The loadings in which an aft tailplane does the stabilising: all read, and no canard that has its part in it. */
export function tailed({ sets }: Subject): FigureSet[] {
  return sets.filter((set) => whole(set) && aftTailplanes(set).length > 0 && !nominal(set).surfaces.some(({ kind }) => kind === "canard"));
}

export function placeOf({ places }: Subject, set: FigureSet, surfaces: readonly Surface[]): Place {
  const [first] = surfaces;
  return first ? places.part(set, first.path) : places.whole();
}
