import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { judge } from "../judge";
import { balances, flies } from "../readiness";
import { yawUnstable } from "../tail/yaw-unstable";

/** Loadings whose motion in pitch may be judged: those with a positive margin, without which `cg_aft_of_limit` has spoken. */
export const pitching = (subject: Subject): FigureSet[] =>
  subject.sets.filter((set) => flies(set, subject));

/**
 * Loadings whose motion in yaw and roll may be judged: something stands upright and turns the nose into the wind, else
 * `fin_volume_low` or `yaw_unstable` has spoken.
 */
export function swinging(subject: Subject): FigureSet[] {
  const least = subject.limit(yawUnstable);
  return subject.sets.filter((set) => {
    const stiffness = set.value("stability.yaw_stiffness");
    return set.value("stability.fin_volume") !== undefined && stiffness && least && !judge(stiffness, least, "least").fails && balances(set, subject);
  });
}
