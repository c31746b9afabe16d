import { nearest } from "../../grammar/nearest";
import type { ValueNode } from "../../grammar/tree";
import { dimensions, sameDimension, type DimensionName } from "../../grammar/units/dimension";
import { quantity, type Quantity } from "../../grammar/units/quantity";
import { usualUnits, wordsFor } from "../../grammar/units/usual";
import type { FigureSet } from "../figures/figure-set";
import type { AirframeClass } from "../model/design/design";
import { bareNumber, withoutUnit, wordsOf } from "../model/evaluate/wording";
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
    if (value && fitsDimension(name, value, threshold.dimension, entry.value, model)) limits.set(name, value);
  }
  return limits;
}

/** Is a value what its name takes? Says so where not, with the unit that is lacking. */
export function fitsDimension(name: string, value: Quantity, dimension: DimensionName, node: ValueNode, model: Model): boolean {
  if (sameDimension(value.dimension, dimensions[dimension])) return true;
  const { words, metric } = usualUnits[dimension];
  const bare = bareNumber(node);
  if (bare) {
    const { message, fixes } = withoutUnit([bare], metric[0], model.file);
    model.problems.add("missing_unit", "error", model.file, node, `${name} takes ${words}: ${message}`, fixes);
    return false;
  }
  const text = wordsOf(node, model.file);
  const got = wordsFor(value.dimension);
  model.problems.add("wrong_dimension", "error", model.file, node, `${name} takes ${words}${text ? `; ${text} is ${got}` : `, not ${got}`}`);
  return false;
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
