import { dimensions, sameDimension, type DimensionName } from "../../../grammar/units/dimension";
import { functions, kinds } from "../../../grammar/vocabulary";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Instance } from "../../model/resolve/instance";
import { valueText } from "../hover/value-text";
import type { View } from "../view";
import type { Item } from "./item";
import { visibleBlocks } from "./visible";

/** Lets that fit, blocks whose values can be read, files and functions. Any fits where the dimension isn't known. */
export function numberItems(view: View, from: Instance, wanted: readonly DimensionName[], isLet: boolean): Item[] {
  const fitting = lets(view, from, (value) => wanted.length === 0 || hasDimension(value, wanted) || value.form === "point");
  const calls = Object.keys(functions).filter((name) => isLet || !["naca", "flat", "point"].includes(name));
  return [
    ...fitting, ...visibleItems(from),
    ...calls.map((name): Item => ({
      label: name, sort: "function", rank: 4, text: `${name}()`, snippet: `${name}($1)`, detail: functions[name].signature, topic: { about: "function", name },
    })),
  ];
}

/** Named values that fit. */
export function lets(view: View, from: Instance, fits: (value: Value) => boolean): Item[] {
  const { world } = view.set.loading.reader;
  return [...from.file.lets.keys()].flatMap((name): Item[] => {
    const value = world.letValue(from.file, name);
    return value && fits(value) ? [{ label: name, sort: "let", rank: 1, detail: valueText(value, view.analysis.say), topic: { about: "let", name } }] : [];
  });
}

export const hasDimension = (value: Value, wanted: readonly DimensionName[]): boolean =>
  value.form === "quantity" && wanted.some((name) => sameDimension(dimensions[name], value.quantity.dimension));

/** Blocks and files as the beginning of a path to a value. */
export function visibleItems(from: Instance): Item[] {
  const blocks = [...visibleBlocks(from)].filter(([, block]) => block.kind !== "loading" && kinds[block.kind] !== undefined)
    .map(([name, block]): Item => ({ label: name, sort: "block", rank: 3, detail: block.kind, topic: { about: "block", name } }));
  return [...blocks, ...[...from.file.uses.keys()].map((name): Item => ({ label: name, sort: "file", rank: 3 }))];
}
