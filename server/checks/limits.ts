import { nearest } from "../../grammar/nearest";
import { dimensionName, dimensions, sameDimension } from "../../grammar/units/dimension";
import { quantity, type Quantity } from "../../grammar/units/quantity";
import type { FigureSet } from "../figures/figure-set";
import type { AirframeClass } from "../model/design/design";
import type { Model } from "../model/model";
import { rewrite } from "../model/problems";
import { only } from "../model/build/design";
import type { Check } from "./check";
import { readFigures } from "./figure-names";

/** A threshold's name in `limits`: the check's code, dotted where it has several. */
export const limitName = (check: Check, name: string): string => (name ? `${check.code}.${name}` : check.code);

/** The thresholds a design sets itself, by name. What is wrong with them is said once. */
export function readLimits(model: Model, sets: readonly FigureSet[], checks: readonly Check[]): ReadonlyMap<string, Quantity> {
  const limits = new Map<string, Quantity>();
  const block = only(model.file.root, "limits");
  if (!block) return limits;
  const known = new Map(checks.flatMap((check) => check.thresholds.map((t) => [limitName(check, t.name), t] as const)));
  for (const [name, slot] of block.slots) {
    const { entry } = slot;
    if (slot.home.file !== model.file || !entry.value) continue;
    const threshold = known.get(name);
    if (!threshold) {
      const near = nearest(name, [...known.keys()]);
      const inner = [...known.keys()].filter((k) => k.startsWith(`${name}.`));
      const hint = inner.length > 0 ? `; it has ${inner.join(" and ")}` : near ? `; did you mean ${near}?` : "";
      model.problems.add("unknown_name", "error", model.file, entry.path, `no check has a threshold "${name}"${hint}`,
        near && inner.length === 0 ? [rewrite(model.file, entry.path, `Write ${near}`, near)] : undefined);
      continue;
    }
    const value = readFigures(entry.value, model, sets, sets[0]).quantity;
    if (!value) continue;
    if (sameDimension(value.dimension, dimensions[threshold.dimension])) limits.set(name, value);
    else {
      model.problems.add("wrong_dimension", "error", model.file, entry.value,
        `${name} takes a ${dimensionName(dimensions[threshold.dimension])}, not a ${dimensionName(value.dimension)}`);
    }
  }
  return limits;
}

/** The threshold in force. */
export function limitOf(limits: ReadonlyMap<string, Quantity>, check: Check, airframe: AirframeClass, name = ""): Quantity | undefined {
  const threshold = check.thresholds.find((t) => t.name === name);
  if (!threshold) throw new Error(`${check.code} has no threshold "${name}"`);
  const own = limits.get(limitName(check, name));
  if (own) return own;
  const usual = threshold.usual(airframe);
  return usual === undefined ? undefined : quantity(usual, dimensions[threshold.dimension]);
}
