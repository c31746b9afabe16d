import { dimensions } from "../../../grammar/units/dimension";
import { halfWidth, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { nominal } from "../readiness";
import { otherPropeller, propellerSizes } from "../solve/propeller";
import { greatestLoads, loadsWith, type RatedLoad } from "./loads";
import type { Plant } from "./parts";

/** Motor, controller or pack over its rating. */
export const currentOverLimit: Check = {
  code: "current_over_limit",
  wave: "slow",
  text: "A motor, controller or pack carries more than its rating at full throttle with packs fully charged, standing or at any speed of level flight.",
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
    const loads = subject.sets.flatMap((set) => greatestLoads(subject, set));
    const over = loads.filter((load) => load.actual > load.lasting * lasting.value).sort((a, b) => b.actual / b.lasting - a.actual / a.lasting);
    if (over.length === 0) return tight(subject, loads);
    // Mirrored parts and loadings that carry the same are one cause.
    const named = new Map<string, RatedLoad>();
    for (const load of over) if (!named.has(`${load.name} ${load.dimension}`)) named.set(`${load.name} ${load.dimension}`, load);
    const fixes = new Map<string, readonly Fix[]>();
    return [...named.values()].map((load) => {
      const plant = load.plants.length > 0 ? subject.places.name(load.set, load.plants[0]) : "";
      if (!fixes.has(plant)) fixes.set(plant, smaller(subject, load, lasting));
      return verdict(subject, load, load.burst ?? load.lasting * burst.value, lasting, fixes.get(plant));
    });
  },
};

function verdict(subject: Subject, load: RatedLoad, burst: number, lasting: Quantity, fixes: readonly Fix[] | undefined): Verdict {
  const { say } = subject;
  const amount = (value: number) => say(quantity(value, dimensions[load.dimension]));
  const beyond = load.actual > burst;
  const share = lasting.value === 1 ? "" : `${say(lasting, "share")} of `;
  const rating = beyond && load.burst !== undefined ? `its burst rating ${amount(load.burst)}` : `${share}its lasting ${amount(load.lasting)}`;
  const when = load.speed > 0 ? `at ${say(quantity(load.speed, dimensions.speed))}` : "standing";
  const carries = `${load.name} ${load.what === "pack" ? "gives" : "takes"} ${amount(load.actual)} ${when} at full throttle on a full charge, over ${rating}`;
  const within = !beyond && load.burst !== undefined ? ` (burst ${amount(load.burst)})` : "";
  return {
    severity: beyond ? "error" : "warning", place: load.place, figure: "power.current_margin", loading: load.set.loading.name,
    message: `${carries}${within}: ${beyond ? harm[load.what] : "good for some seconds, not for a flight"}; ${cures[load.what]}`,
    fixes,
  };
}

/** Propellers of less diameter, or of less pitch, with which every part that they load is within its rating. */
function smaller(subject: Subject, { set, plants }: RatedLoad, lasting: Quantity): readonly Fix[] {
  const within = (one: FigureSet, tried: readonly Plant[]) => {
    const before = nominal(one).powerplants;
    const changed = new Set(tried.filter((plant, i) => plant !== before[i]).map(({ path }) => path));
    return loadsWith(subject, one, tried).every((load) => load.actual <= load.lasting * lasting.value || !load.plants.some((path) => changed.has(path)));
  };
  if (plants.length === 0) return [];
  return propellerSizes.flatMap((size) => otherPropeller(subject, set, plants[0], size, "less", within) ?? []);
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
