import type { Place } from "../../../shared/finding";
import type { DimensionName } from "../../../grammar/units/dimension";
import { currentLoads } from "../../figures/current-margin";
import type { FigureSet } from "../../figures/figure-set";
import { runsOf } from "../../figures/power";
import type { Subject } from "../check";
import { withoutSides } from "../names";
import { nominal } from "../readiness";
import { placeIn } from "./parts";

/** One rating of one part against what it carries standing at full throttle, packs fully charged. SI. */
export interface RatedLoad {
  readonly set: FigureSet;
  /** As it is called in the text. */
  readonly name: string;
  readonly what: "motor" | "controller" | "pack";
  readonly dimension: DimensionName;
  readonly actual: number;
  readonly lasting: number;
  readonly burst?: number;
  readonly place: Place;
}

/** Every rating of motors (current and power), controllers and packs in a loading. */
export function ratedLoads(subject: Subject, set: FigureSet): RatedLoad[] {
  const full = set.facts.power?.full;
  if (!full) return [];
  const plants = nominal(set).powerplants;
  const currents = currentLoads(full, plants).map(({ path, part, actual, allowed, burst }): RatedLoad => {
    const plant = plants.find((one) => (part === "motor" ? path === `${one.path}.motor` : path === one.controller?.path))?.path;
    const place = part === "pack" || plant === undefined
      ? subject.places.part(set, path, "c_rating")
      : placeIn(subject, set, plant, part === "motor" ? "motor" : "esc", "max_current");
    return { set, name: withoutSides(path), what: part, dimension: "current", actual, lasting: allowed, burst, place };
  });
  const powers = runsOf(full).flatMap((run): RatedLoad[] => {
    const lasting = plants.find((plant) => plant.path === run.path)?.motor?.maxPower;
    const place = placeIn(subject, set, run.path, "motor", "max_power");
    return lasting ? [{ set, name: `${withoutSides(run.path)}.motor`, what: "motor", dimension: "power", actual: run.motorVolts * run.motorCurrent, lasting, place }] : [];
  });
  return [...currents, ...powers];
}
