import type { Fix } from "../../../shared/finding";
import { standardGravity } from "../../compute/constants";
import type { FigureSet } from "../../figures/figure-set";
import { runsOf } from "../../figures/power";
import type { Check, Subject } from "../check";
import { asker, byClass } from "../class-words";
import { bandNote, past, where } from "../judge";
import { whole } from "../readiness";
import { otherPropeller } from "../solve/propeller";
import { loadsWith, runWith } from "./loads";

/** Too little thrust for the weight. */
export const thrustMarginLow: Check = {
  code: "thrust_margin_low",
  wave: "slow",
  text: "Thrust to weight is under what the class needs.",
  thresholds: [{
    name: "thrust_to_weight", dimension: "ratio", text: "Least static thrust over weight.",
    usual: byClass({ trainer: 0.35, sport: 0.5, aerobatic: 0.8, glider: undefined, motor_glider: 0.3, speed: 0.5, seaplane: 0.5 }, 0.4),
    source: "a quarter of the weight at least, a third to a half better, 1 for vertical flight: Shaw's rule, magazine column 2001; by class common practice, no source",
  }],
  run(subject) {
    const least = subject.limit(thrustMarginLow, "thrust_to_weight");
    const found = least ? past(subject.sets.filter(whole), "power.thrust_to_weight", least, "least") : [];
    const [worst] = found;
    if (!least || !worst) return [];
    const plant = worst.set.loading.design.powerplants[0];
    const value = `thrust is ${subject.say(worst.value)} of the weight${where(found, subject)}`;
    const needs = `${asker(subject, thrustMarginLow, "thrust_to_weight")} ${subject.say(least)}`;
    return [{
      severity: worst.fails ? "warning" : "hint", figure: "power.thrust_to_weight", loading: worst.set.loading.name,
      place: plant ? subject.places.part(worst.set, plant.path) : subject.places.whole(),
      message: worst.fails
        ? `${value}, ${needs}${bandNote(worst)}: it will leave the ground late and climb badly; give it more propeller, more cells or less weight`
        : `${value}: ${needs}; it holds, but its band reaches past the limit`,
      fixes: worst.fails && plant ? larger(subject, worst.set, plant.path, least.value) : undefined,
    }];
  },
};

/** A propeller large enough that still leaves every part within its lasting rating. Its own greater weight is left out. */
function larger(subject: Subject, set: FigureSet, path: string, least: number): Fix[] {
  const weight = standardGravity * Math.max(...subject.sets.map((one) => one.value("mass.total")?.value ?? 0));
  const fix = otherPropeller(subject, set, path, "diameter", "more", (one, plants) => {
    const run = runWith(one, plants, "nominal");
    const thrust = run ? runsOf(run).reduce((sum, { path: own, thrust }) => sum - thrust * (plants.find((p) => p.path === own)?.thrustAxis[0] ?? -1), 0) : 0;
    return thrust >= least * weight && loadsWith(subject, one, plants).every(({ actual, lasting }) => actual <= lasting);
  });
  return fix ? [fix] : [];
}
