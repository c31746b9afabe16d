import type { BlockNode } from "../../../grammar/tree";
import type { Fix } from "../../../shared/finding";
import type { Problems } from "../problems";
import type { Instance } from "../resolve/instance";
import { insertInto } from "./insert";

/** Has a sortie legs? */
export function judgeSortie(block: Instance, node: BlockNode, title: string, there: ReadonlySet<string>, problems: Problems): void {
  if (there.has("leg")) return;
  problems.add("missing_property", "error", block.file, node.name ?? node.kind, `${title} has no leg; it takes one or more, in the order they are flown`,
    insertInto(node, block.file, ["leg out { distance = 1.2 km }"], "last", "Add a leg"));
}

/** Does a leg that is to reach a height change it? */
export function judgeLeg(block: Instance, node: BlockNode, title: string, there: ReadonlySet<string>, problems: Problems): void {
  if (!there.has("height") || there.has("climb") || there.has("glide")) return;
  const fix = (entry: string, does: string): Fix[] => insertInto(node, block.file, [entry], "first", `Add ${entry}: ${does}`) ?? [];
  const height = block.slots.get("height");
  const span = height?.home === block ? height.entry.path : node.name ?? node.kind;
  problems.add("wrong_value", "error", block.file, span,
    `${title} stays at its height, so it never reaches another; add climb = full, a rate, or glide = yes`,
    [...fix("climb = full", "it climbs"), ...fix("glide = yes", "it comes down")]);
}
