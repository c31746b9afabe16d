import { leastMargin } from "../../figures/class-margins";
import type { FigureSet } from "../../figures/figure-set";
import type { AirframeClass } from "../../model/design/design";
import type { Subject } from "../check";
import { balances } from "../readiness";

/** What the margin of one loading follows from, SI. */
export interface Balance {
  readonly set: FigureSet;
  readonly mass: number;
  readonly x: number;
  readonly neutralPoint: number;
  readonly chord: number;
}

/** The loadings whose balance can be judged. */
export function balancesOf(subject: Subject): Balance[] {
  return subject.sets.filter((set) => balances(set, subject)).flatMap((set) => {
    const [mass, x, neutralPoint, chord] = ["mass.total", "cg.x", "stability.neutral_point", "wing.mean_chord"].map((name) => set.value(name)?.value);
    const known = mass !== undefined && x !== undefined && neutralPoint !== undefined && chord !== undefined;
    return known ? [{ set, mass, x, neutralPoint, chord }] : [];
  });
}

export const marginOf = ({ x, neutralPoint, chord }: Balance): number => (neutralPoint - x) / chord;

/** The margin at the forward limit of the balance point, where that is known. */
export function forwardMargin({ set, neutralPoint, chord }: Balance): number | undefined {
  const limit = set.value("stability.cg_forward");
  return limit && (neutralPoint - limit.value) / chord;
}

/** The balance point that gives a margin. */
export const placeFor = ({ neutralPoint, chord }: Balance, margin: number): number => neutralPoint - margin * chord;

/** Greatest static margin before a model flies like a dart: half as much again as the 15 % that modellers' rules end at. */
export const greatestMargin = 0.25;

/** Where the usual margins of a class end (common practice, no source): fixes aim between this and the least. */
const usualMost: Partial<Record<AirframeClass, number>> = { trainer: 0.2, aerobatic: 0.08, tailless: 0.08 };

/** The margin a fix aims at: the middle of the class's usual ones, or a little inside the limits where those lie elsewhere. */
export function aimedMargin(subject: Subject, least: number, most: number): number {
  const middle = (leastMargin[subject.class].value + (usualMost[subject.class] ?? 0.15)) / 2;
  return middle > least && middle < most ? middle : least + Math.min(0.03, (most - least) / 2);
}
