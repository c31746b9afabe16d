import type { Place } from "../../../shared/finding";
import type { DimensionName } from "../../../grammar/units/dimension";
import { atmosphere } from "../../compute/atmosphere/atmosphere";
import { solveStatic, type StaticResult } from "../../compute/powertrain/solve-static";
import { currentLoads } from "../../figures/current-margin";
import type { FigureSet } from "../../figures/figure-set";
import { runsOf } from "../../figures/power";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { placeIn, type Plant } from "./parts";

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
  /** The powerplants it belongs to or feeds. */
  readonly plants: readonly string[];
}

/** Every rating of motors (current and power), controllers and packs in a loading, in its own run or another. */
export function ratedLoads(subject: Subject, set: FigureSet, full: StaticResult | undefined = set.facts.power?.full): RatedLoad[] {
  if (!full) return [];
  const plants = nominal(set).powerplants;
  const currents = currentLoads(full, plants).map(({ path, part, actual, allowed, burst }): RatedLoad => {
    const plant = plants.find((one) => (part === "motor" ? path === `${one.path}.motor` : path === one.controller?.path))?.path;
    const place = part === "pack" || plant === undefined
      ? subject.places.part(set, path, "c_rating")
      : placeIn(subject, set, plant, part === "motor" ? "motor" : "esc", "max_current");
    const fed = plants.filter(({ source }) => full.sources.some((one) => one.path === source && "packs" in one && one.packs.some((pack) => pack.path === path)));
    const name = subject.places.name(set, path);
    return {
      set, name, place, what: part, plants: plant === undefined ? fed.map((one) => one.path) : [plant],
      dimension: "current", actual, lasting: allowed, burst,
    };
  });
  const powers = runsOf(full).flatMap((run): RatedLoad[] => {
    const lasting = plants.find((plant) => plant.path === run.path)?.motor?.maxPower;
    const place = placeIn(subject, set, run.path, "motor", "max_power");
    const name = subject.places.name(set, `${run.path}.motor`);
    const actual = run.motorVolts * run.motorCurrent;
    return lasting ? [{ set, name, place, what: "motor", plants: [run.path], dimension: "power", actual, lasting }] : [];
  });
  return [...currents, ...powers];
}

/** The same with other powerplants, worked out anew. */
export const loadsWith = (subject: Subject, set: FigureSet, powerplants: readonly Plant[]): RatedLoad[] =>
  ratedLoads(subject, set, runWith(set, powerplants, "full"));

/** A loading's run with other powerplants in place of its own. */
export function runWith(set: FigureSet, powerplants: readonly Plant[], state: "nominal" | "full"): StaticResult | undefined {
  const { sources, field } = nominal(set);
  const air = atmosphere(field);
  return air && solveStatic({ powerplants, sources, air, state });
}
