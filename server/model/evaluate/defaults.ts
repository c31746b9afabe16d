import { parse } from "../../../grammar/parse";
import type { EntryNode } from "../../../grammar/tree";
import { judge } from "../../../grammar/vocabulary/property";
import type { Property } from "../../../grammar/vocabulary/schema";
import { evaluate } from "./expression";
import type { Site, World } from "./site";

const known = new WeakMap<Property, { readonly value: unknown }>();

/** The default as the vocabulary writes it, worked out like any text. A default in words ("as the motor") is none. */
export function defaultOf<T>(property: Property<T>): T | undefined {
  let found = known.get(property);
  if (!found) known.set(property, (found = { value: property.default === "" ? undefined : fromText(property) }));
  return found.value as T | undefined;
}

/** Defaults name no blocks and no values, so they need no model around them. */
const nowhere = { world: undefined as unknown as World, site: undefined as unknown as Site, complain: () => undefined };

function fromText<T>(property: Property<T>): T | undefined {
  const { tree, issues } = parse(`item { ${property.name} = ${property.default} }`);
  const block = tree.items[0];
  const entry = block?.type === "block" ? (block.body?.items[0] as EntryNode | undefined) : undefined;
  if (issues.length > 0 || !entry?.value) return undefined;
  if (entry.value.type === "named" && property.form.form !== "word") return undefined;
  const value = evaluate(entry.value, { ...nowhere, form: property.form });
  const judged = value && judge(property, value);
  return judged?.fits ? judged.value : undefined;
}
