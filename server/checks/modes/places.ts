import type { Place } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { nominal } from "../readiness";

/** The first surface of a kind, else the design as a whole. */
function surfacePlace({ places }: Subject, set: FigureSet, kind: "fin" | "wing"): Place {
  const surface = nominal(set).surfaces.find((one) => one.kind === kind);
  return surface ? places.part(set, surface.path) : places.whole();
}

export const atFin = (subject: Subject, set: FigureSet): Place => surfacePlace(subject, set, "fin");

export const atWing = (subject: Subject, set: FigureSet): Place => surfacePlace(subject, set, "wing");

export const atWhole = ({ places }: Subject): Place => places.whole();
