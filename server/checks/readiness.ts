import { missingWeights } from "../compute/mass/missing";
import type { FigureSet } from "../figures/figure-set";
import type { Design, Settled } from "../model/design/design";
import type { Quantity } from "../../grammar/units/quantity";
import type { Waiver } from "../model/resolve/instance";
import { settle } from "../model/design/settle";
import type { Subject } from "./check";

const settled = new WeakMap<Design<Quantity>, Settled<Design<Quantity>>>();

/** The loading's design, as it is computed, in plain SI numbers, without tolerances. */
export function nominal({ design }: FigureSet): Settled<Design<Quantity>> {
  let plain = settled.get(design);
  if (!plain) settled.set(design, (plain = settle(design)));
  return plain;
}

/** Paths of the parts of a loading that must weigh something and don't. */
export const unweighed = (set: FigureSet): string[] => missingWeights(nominal(set));

/** Everything that should be part of the loading could be read. */
export const whole = (set: FigureSet): boolean => set.loading.broken.length === 0;

/**
 * Is the loading far enough written to judge its balance? Every part weighs something, or `weight_missing` is waived for
 * it, and there is more than bare surfaces. Until then the balance point is that of half an aircraft.
 */
export function balances(set: FigureSet, { places, file }: Subject): boolean {
  const { bodies, loads } = set.loading.design;
  if (!whole(set) || bodies.length + loads.length === 0) return false;
  if (waives(file.root.waives)) return true;
  return unweighed(set).every((path) => {
    for (let at = places.blockOf(set, path); at; at = at.parent) if (waives(at.waives)) return true;
    return false;
  });
}

/** Can what it does in flight be judged? With a margin under nothing it does not fly, and `cg_aft_of_limit` has said so. */
export const flies = (set: FigureSet, subject: Subject): boolean =>
  balances(set, subject) && (set.value("stability.static_margin")?.value ?? -1) >= 0;

const waives = (waivers: readonly Waiver[]): boolean => waivers.some(({ node }) => node.check?.text === "weight_missing");
