import { quantity } from "../../../grammar/units/quantity";
import { dimensions } from "../../../grammar/units/dimension";
import type { FigureSet } from "../../figures/figure-set";
import type { Check } from "../check";
import { always, asker, practice } from "../class-words";
import { bandNote, judge, past, where } from "../judge";
import { balances, nominal } from "../readiness";
import { placeOf } from "./volumes";

const none = quantity(0, dimensions.per_angle);

const upright = (set: FigureSet) => nominal(set).surfaces.filter(({ kind }) => kind === "fin");

/** What stands upright does not turn the nose into the wind. */
export const yawUnstable: Check = {
  code: "yaw_unstable",
  wave: "slow",
  text: "Fins and bodies together do not turn the nose into the wind (error), or hardly do (warning). Only where something stands upright.",
  thresholds: [{
    name: "", dimension: "per_angle", text: "Least yaw stiffness, per radian.", usual: always(0.01), source: practice,
  }],
  run(subject) {
    const least = subject.limit(yawUnstable);
    if (!least) return [];
    const sets = subject.sets.filter((set) => set.value("stability.fin_volume") && balances(set, subject));
    const found = past(sets, "stability.yaw_stiffness", least, "least").filter((one) => one.fails);
    const [worst] = found;
    if (!worst) return [];
    const unstable = judge(worst.value, none, "least").fails;
    const value = `yaw stiffness is ${subject.say(worst.value)}${where(found, subject)}`;
    return [{
      severity: unstable ? "error" : "warning", figure: "stability.yaw_stiffness", loading: worst.set.loading.name,
      place: placeOf(subject, worst.set, upright(worst.set)),
      message: unstable
        ? `${value}: it turns its nose out of the wind and goes on turning; enlarge the fin, set it further aft, or shorten the nose`
        : `${value}, ${asker(subject, yawUnstable)} ${subject.say(least)}${bandNote(worst)}: it hardly weathercocks and swings in turns; ` +
          "enlarge the fin, set it further aft, or shorten the nose",
    }];
  },
};
