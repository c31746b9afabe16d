import { entryOf, groupsToCome, catalogue } from "../../shared/catalogue";
import { nearest } from "../../grammar/nearest";
import { pathOf } from "../model/resolve/instance";
import type { FigureSet } from "./figure-set";
import { flightAbsence } from "./flight/absence";

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
  const needsWing = ["wing", "aero", "stability", "trim", "modes", "flight"].includes(group) || name === "cg.chord" || name === "cg.behind_leading_edge";
  if (needsWing && wings.length === 0) return `there is no wing${trouble}`;
  if (name === "stability.tail_volume" || name === "stability.fin_volume" || name === "stability.canard_volume") {
    return `no surface gives one${trouble}`;
  }
  if (name === "aero.downwash_slope" && !design.surfaces.some(({ kind }) => kind === "tailplane")) return `there is no tailplane${trouble}`;
  const flying = flightAbsence(name, set, powerAbsence);
  if (flying) return flying + trouble;
  if (group === "motor_out") return motorOutAbsence(name, set) + trouble;
  const bench = /^power\.(.+)\.bench_(rpm|amps|thrust)$/.exec(name);
  if (bench) return benchAbsence(bench[1], bench[2], set) + trouble;
  if (group === "power") return powerAbsence(set) + trouble;
  if (!set.facts.mass) return `nothing has a weight yet${trouble}`;
  return `what it rests on can't be worked out${trouble}`;
}

/** The nearest name to one that is none: of what the sets hold, or of what they might. */
export function nearestOf(name: string, sets: readonly FigureSet[]): string | undefined {
  return nearest(name, new Set([...sets.flatMap((set) => set.all().map((figure) => figure.name)), ...catalogue.map((entry) => entry.name)]));
}

function motorOutAbsence(name: string, set: FigureSet): string {
  const { powerplants, surfaces } = set.loading.design;
  if (powerplants.length < 2) return "there are fewer than two powerplants in this loading";
  if (!powerplants.some(({ path }) => name.startsWith(`motor_out.${path}.`))) {
    return `no powerplant has that name; there are ${powerplants.map(({ path }) => path).join(", ")}`;
  }
  if (!surfaces.some(({ controls }) => controls.some(({ kind }) => kind === "rudder" || kind === "ruddervator"))) return "nothing steers in yaw: there is no rudder or ruddervator";
  const failure = set.facts.motorOut?.each.find(({ path }) => name.startsWith(`motor_out.${path}.`));
  if (failure && !failure.control) return "with that powerplant dead it can't be held straight at any speed of level flight";
  return powerplants.every((plant) => plant.motor && plant.propeller && plant.source) ? "what it rests on can't be worked out" : powerAbsence(set);
}

function benchAbsence(path: string, word: string, set: FigureSet): string {
  const { benches } = set.loading.design;
  if (benches.some((bench) => bench.path === path)) return set.facts.power ? `${path} has no ${word}, or nothing to compare it with` : powerAbsence(set);
  return benches.length === 0 ? "no powerplant has a bench run" : `no run on the stand has that name; there are ${benches.map((bench) => bench.path).join(", ")}`;
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
