import { entryOf, groupsToCome, catalogue } from "../../shared/catalogue";
import { nearest } from "../../grammar/nearest";
import { pathOf } from "../model/resolve/instance";
import type { FigureSet } from "./figure-set";

/** Why a figure isn't there, in words a designer can act on. For figures that somebody asked for. */
export function absenceOf(name: string, set: FigureSet): string {
  const group = name.split(".")[0];
  const { design, broken } = set.loading;
  if (groupsToCome.includes(group)) return "it is not computed yet";
  if (!entryOf(name)) {
    const near = nearest(name, catalogue.map((entry) => entry.name));
    return `no figure has that name${near ? `; did you mean ${near}?` : ""}`;
  }
  const faulty = broken.map(pathOf);
  const trouble = faulty.length > 0 ? `; ${faulty.join(", ")} can't be read yet` : "";
  if (name.startsWith("mass.") && entryOf(name)!.name === "mass.<path>") {
    const near = nearestOf(name, [set]);
    return `no part is called ${name.slice(5)}, or it has no weight${trouble}${near ? `; did you mean ${near}?` : ""}`;
  }
  const wings = design.surfaces.filter((s) => s.kind === "wing" && s.reference);
  const needsWing = ["wing", "aero", "stability"].includes(group) || name === "cg.chord" || name === "cg.behind_leading_edge";
  if (needsWing && wings.length === 0) return `there is no wing${trouble}`;
  if (name === "stability.tail_volume" || name === "stability.fin_volume" || name === "stability.canard_volume") {
    return `no surface gives one${trouble}`;
  }
  if (name === "aero.downwash_slope" && !design.surfaces.some(({ kind }) => kind === "tailplane")) return `there is no tailplane${trouble}`;
  if (group === "power") return powerAbsence(set) + trouble;
  if (!set.facts.mass) return `nothing has a weight yet${trouble}`;
  return `what it rests on can't be worked out${trouble}`;
}

/** The nearest name to one that is none: of what the sets hold, or of what they might. */
export function nearestOf(name: string, sets: readonly FigureSet[]): string | undefined {
  return nearest(name, new Set([...sets.flatMap((set) => set.all().map((figure) => figure.name)), ...catalogue.map((entry) => entry.name)]));
}

function powerAbsence(set: FigureSet): string {
  const { powerplants } = set.loading.design;
  if (powerplants.length === 0) return "there is no powerplant in this loading";
  const missing = powerplants.flatMap((plant) => {
    const lacks = (["motor", "propeller", "source"] as const).filter((part) => plant[part] === undefined);
    return lacks.length > 0 ? [`${plant.path} has no ${lacks.map((l) => (l === "source" ? "battery" : l)).join(", no ")} that can be computed`] : [];
  });
  return missing.length > 0 ? missing.join("; ") : "no running point was found";
}
