import type { Place } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Instance } from "../../model/resolve/instance";
import type { Subject } from "../check";
import { type nominal } from "../readiness";

export type Plant = ReturnType<typeof nominal>["powerplants"][number];

/** The block inside a powerplant of a kind: its motor, propeller or controller, whatever its name. */
export function partOf({ places }: Subject, set: FigureSet, plant: string, kind: "motor" | "propeller" | "esc"): Instance | undefined {
  return [...(places.blockOf(set, plant)?.children.values() ?? [])].find((child) => child.kind === kind);
}

/** Where a property of such a part is written, else the part, else the powerplant. */
export function placeIn(subject: Subject, set: FigureSet, plant: string, kind: "motor" | "propeller" | "esc", property: string): Place {
  const part = partOf(subject, set, plant, kind);
  const slot = part && subject.places.slot(set, part, property);
  return (slot && subject.places.written(slot)) ?? (part ? subject.places.block(part) : subject.places.part(set, plant));
}
