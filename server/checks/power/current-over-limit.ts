import { dimensions } from "../../../grammar/units/dimension";
import { halfWidth, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { nominal } from "../readiness";
import { otherPropeller } from "../solve/propeller";
import { loadsWith, ratedLoads, type RatedLoad } from "./loads";
import type { Plant } from "./parts";

/** Motor, controller or pack over its rating. */
export const currentOverLimit: Check = {
  code: "current_over_limit",
  wave: "slow",
  text: "A motor, controller or pack carries more than its rating, standing at full throttle with packs fully charged.",
  thresholds: [
    { name: "lasting", dimension: "ratio", text: "Greatest current or power over the lasting rating.", usual: always(1), source: "the maker's rating" },
    {
      name: "burst", dimension: "ratio", text: "What counts as over the burst rating of a part that has none written, as a multiple of its lasting rating.",
      usual: always(1.2), source: practice,
    },
  ],
  run(subject) {
    const [lasting, burst] = [subject.limit(currentOverLimit, "lasting"), subject.limit(currentOverLimit, "burst")];
    if (!lasting || !burst) return [];
    const loads = subject.sets.flatMap((set) => ratedLoads(subject, set));
    const over = loads.filter((load) => load.actual > load.lasting * lasting.value).sort((a, b) => b.actual / b.lasting - a.actual / a.lasting);
    if (over.length === 0) return tight(subject, loads);
    // Mirrored parts and loadings that carry the same are one cause.
    const named = new Map<string, RatedLoad>();
    for (const load of over) if (!named.has(`${load.name} ${load.dimension}`)) named.set(`${load.name} ${load.dimension}`, load);
    const fixes = new Map<string, Fix | undefined>();
    return [...named.values()].map((load) => {
      const plant = load.plants.length > 0 ? subject.places.name(load.set, load.plants[0]) : "";
      if (!fixes.has(plant)) fixes.set(plant, smaller(subject, load, lasting));
      return verdict(subject, load, load.burst ?? load.lasting * burst.value, lasting, fixes.get(plant));
    });
  },
};

function verdict(subject: Subject, load: RatedLoad, burst: number, lasting: Quantity, fix: Fix | undefined): Verdict {
  const { say } = subject;
  const amount = (value: number) => say(quantity(value, dimensions[load.dimension]));
  const beyond = load.actual > burst;
  const share = lasting.value === 1 ? "" : `${say(lasting, "share")} of `;
  const rating = beyond && load.burst !== undefined ? `its burst rating ${amount(load.burst)}` : `${share}its lasting ${amount(load.lasting)}`;
  const carries = `${load.name} ${load.what === "pack" ? "gives" : "takes"} ${amount(load.actual)} standing at full throttle on a full charge, over ${rating}`;
  const within = !beyond && load.burst !== undefined ? ` (burst ${amount(load.burst)})` : "";
  return {
    severity: beyond ? "error" : "warning", place: load.place, figure: "power.current_margin", loading: load.set.loading.name,
    message: `${carries}${within}: ${beyond ? harm[load.what] : "good for some seconds, not for a flight"}; ${cures[load.what]}`,
    fixes: fix && [fix],
  };
}

/** A propeller with which every part that it loads is within its rating. */
function smaller(subject: Subject, { set, plants }: RatedLoad, lasting: Quantity): Fix | undefined {
  const within = (one: FigureSet, tried: readonly Plant[]) => {
    const before = nominal(one).powerplants;
    const changed = new Set(tried.filter((plant, i) => plant !== before[i]).map(({ path }) => path));
    return loadsWith(subject, one, tried).every((load) => load.actual <= load.lasting * lasting.value || !load.plants.some((path) => changed.has(path)));
  };
  return plants.length > 0 ? otherPropeller(subject, set, plants[0], "smaller", within) : undefined;
}

const harm = { motor: "it may burn its winding or lose its magnets", controller: "it may burn or shut down in flight", pack: "it will heat, swell and may catch fire" };
const cures = {
  motor: "take a smaller propeller, less pitch or a motor of fewer rpm per volt",
  controller: "take a smaller propeller, less pitch or a stronger controller",
  pack: "take a smaller propeller, less pitch or a pack of more capacity or C",
};

/** All within, but so close that the band of the inputs reaches over. */
function tight(subject: Subject, loads: readonly RatedLoad[]): Verdict[] {
  const near = subject.sets.flatMap((set) => {
    const margin = set.value("power.current_margin");
    return margin && margin.value >= 1 && margin.value - halfWidth(margin) < 1 ? [{ set, margin }] : [];
  })[0];
  const tightest = loads.filter((load) => load.set === near?.set && load.dimension === "current").sort((a, b) => b.actual / b.lasting - a.actual / a.lasting)[0];
  if (!near || !tightest) return [];
  return [{
    severity: "hint", place: tightest.place, figure: "power.current_margin", loading: near.set.loading.name,
    message: `current margin is ${subject.say(near.margin)}, tightest at ${tightest.name}: it holds, but its band reaches past the limit`,
  }];
}
