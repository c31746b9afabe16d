import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity } from "../../../grammar/units/quantity";
import { rotationLimit } from "../../compute/propeller/rotation-limit";
import { runsOf } from "../../figures/power";
import type { FigureSet } from "../../figures/figure-set";
import type { PlantRun } from "../../compute/powertrain/plant-run";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { nominal } from "../readiness";
import { placeIn, type Plant } from "./parts";

/** A propeller faster than its blades or the air allow. */
export const propellerOverspeed: Check = {
  code: "propeller_overspeed",
  wave: "slow",
  text: "A propeller turns faster than its maker or its blade type allows, or its tips come near the speed of sound.",
  thresholds: [
    {
      name: "rotation", dimension: "ratio", text: "Greatest share of the allowed rotation: the maker's `max_rpm`, else rpm × diameter of the blade type.",
      usual: always(1), source: "thin 145,000, wide 65,000, thick 190,000 rpm × inch: common practice, no source; the maker's figure goes first",
    },
    { name: "mach", dimension: "ratio", text: "Greatest Mach number of the tips.", usual: always(0.7), source: practice },
  ],
  run(subject) {
    const found = new Map<string, Verdict>();
    for (const set of subject.sets) for (const run of set.facts.power ? runsOf(set.facts.power.full) : []) {
      const plant = nominal(set).powerplants.find((one) => one.path === run.path);
      const verdict = plant && judgeOne(subject, set, plant, run);
      const name = subject.places.name(set, run.path);
      if (verdict && !found.has(name)) found.set(name, verdict);
    }
    return [...found.values()];
  },
};

function judgeOne(subject: Subject, set: FigureSet, plant: Plant, run: PlantRun): Verdict | undefined {
  const { say } = subject;
  const [share, mach] = [subject.limit(propellerOverspeed, "rotation"), subject.limit(propellerOverspeed, "mach")];
  const name = subject.places.name(set, plant.path);
  const speed = (rotation: number) => say(quantity(rotation, dimensions.rotation));
  const about = { figure: `power.${plant.path}.static_rpm`, loading: set.loading.name };
  const limit = plant.propeller && rotationLimit(plant.propeller);
  if (limit && share && run.rotation > limit.rotation * share.value) {
    const maker = limit.from === "maker";
    const part = share.value === 1 ? "" : ` (limits asks for ${say(share, "share")} of that)`;
    const allowed = maker ? `its maker allows ${speed(limit.rotation)}` : `blades of this type stand ${speed(limit.rotation)} at this diameter`;
    return {
      ...about, severity: maker ? "error" : "warning", place: placeIn(subject, set, plant.path, "propeller", maker ? "max_rpm" : "diameter"),
      message: `the propeller of ${name} turns ${speed(run.rotation)} standing on a full charge; ${allowed}${part}: a blade may come off and cut; ` +
        "take fewer cells or fewer rpm per volt, or a propeller made for it",
    };
  }
  if (!mach || !(run.tipMach > mach.value)) return undefined;
  return {
    ...about, severity: "warning", place: placeIn(subject, set, plant.path, "propeller", "diameter"),
    message: `the tips of ${name} reach Mach ${say(plain(run.tipMach))} standing on a full charge, over ${say(mach)}: loud, and the thrust falls short of what is computed; ` +
      "take a smaller diameter, fewer cells or fewer rpm per volt",
  };
}
