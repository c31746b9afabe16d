import type { Place } from "../../../shared/finding";
import type { DimensionName } from "../../../grammar/units/dimension";
import { atmosphere } from "../../compute/atmosphere/atmosphere";
import { runAt, type RunResult } from "../../compute/powertrain/run-at";
import { propellerMap, type PropellerMap } from "../../compute/propeller/propeller-map";
import { currentLoads } from "../../figures/current-margin";
import type { FigureSet } from "../../figures/figure-set";
import { runsOf } from "../../figures/power";
import type { Propeller, Source } from "../../model/design/power";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { placeIn, type Plant } from "./parts";

/** One rating of one part against what it carries at full throttle, packs fully charged. SI. */
export interface RatedLoad {
  readonly set: FigureSet;
  /** As it is called in the text. */
  readonly name: string;
  readonly what: "motor" | "controller" | "pack";
  readonly dimension: DimensionName;
  readonly actual: number;
  readonly lasting: number;
  readonly burst?: number;
  /** Airspeed at which it carries that, m/s; 0 standing. */
  readonly speed: number;
  readonly place: Place;
  /** The powerplants it belongs to or feeds. */
  readonly plants: readonly string[];
}

/** Every rating of motors (current and power), controllers and packs in a loading, in its own run or another. */
export function ratedLoads(subject: Subject, set: FigureSet, full: RunResult | undefined = set.facts.power?.full, speed = 0): RatedLoad[] {
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
      dimension: "current", actual, lasting: allowed, burst, speed,
    };
  });
  const powers = runsOf(full).flatMap((run): RatedLoad[] => {
    const lasting = plants.find((plant) => plant.path === run.path)?.motor?.maxPower;
    const place = placeIn(subject, set, run.path, "motor", "max_power");
    const name = subject.places.name(set, `${run.path}.motor`);
    const actual = run.motorVolts * run.motorCurrent;
    return lasting ? [{ set, name, place, what: "motor", plants: [run.path], dimension: "power", actual, lasting, speed }] : [];
  });
  return [...currents, ...powers];
}

/** A load in flight counts where it is so much more than that at rest: most are met standing, and are told of there. */
const moreThanAtRest = 1.005;

/** The same over all speeds of level flight, each where it is greatest. */
export function greatestLoads(subject: Subject, set: FigureSet): RatedLoad[] {
  const flown = (set.facts.envelope?.full ?? []).map(({ speed, run }) => ratedLoads(subject, set, run, speed));
  return ratedLoads(subject, set).map((standing, i) => {
    const most = flown.map((loads) => loads[i]).reduce((a, b) => (b.actual > a.actual ? b : a), standing);
    return most.actual > moreThanAtRest * standing.actual ? most : standing;
  });
}

/** Those standing, and at some of the speeds of level flight, with other powerplants or packs: worked out anew. */
export function loadsWith(subject: Subject, set: FigureSet, powerplants: readonly Plant[], others?: Partial<Others>): RatedLoad[] {
  const flown = set.facts.envelope?.full ?? [];
  const speeds = [0, ...flown.filter((_, i) => i % every === every - 1).map(({ speed }) => speed)];
  return speeds.flatMap((speed) => ratedLoads(subject, set, runWith(set, powerplants, "full", { ...others, speed }), speed));
}

/** Of the speeds of the envelope, to which a fix is held. */
const every = 3;

interface Others {
  readonly sources: readonly Source[];
  readonly speed: number;
}

const maps = new WeakMap<Propeller, PropellerMap>();

/** A propeller that is tried at several speeds has one map. */
function mapOf(propeller: Propeller): PropellerMap {
  let map = maps.get(propeller);
  if (!map) maps.set(propeller, (map = propellerMap(propeller)));
  return map;
}

/** A loading's run at full throttle with other powerplants, or other packs, in place of its own. */
export function runWith(
  set: FigureSet, powerplants: readonly Plant[], state: "nominal" | "full", { sources = nominal(set).sources, speed = 0 }: Partial<Others> = {},
): RunResult | undefined {
  const air = atmosphere(nominal(set).field);
  return air && runAt({ powerplants, sources, air, state, speed, mapOf });
}
