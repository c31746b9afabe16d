import type { NameNode } from "../../../grammar/tree";
import { isInside, type Instance } from "../../model/resolve/instance";
import type { Meaning } from "./meaning";

/**
 * The block that a name is first given to. A block that changes a copied one, or a part in a loading, goes by the name of
 * what it changes: renaming one renames all.
 */
export function canonical(block: Instance): Instance {
  const changed = isInside(block, "loading") && block.kind !== "loading" ? partChanged(block) : copied(block);
  return changed ? canonical(changed) : block;
}

/** The child of the copied block that this one comes from or changes. */
function copied(block: Instance): Instance | undefined {
  const { parent } = block;
  if (!parent?.parent) return undefined;
  const origin = parent.origin ?? copied(parent);
  const child = origin?.children.get(block.key);
  return child?.kind === block.kind && child !== block ? child : undefined;
}

/** The part that a block in a loading changes. */
function partChanged(block: Instance): Instance | undefined {
  const { parent } = block;
  if (!parent) return undefined;
  const around = parent.kind === "loading" ? parent.parent : partChanged(parent);
  const part = around?.children.get(block.key);
  return part?.kind === block.kind ? part : undefined;
}

/** The name where a block is declared; its kind where it has no name of its own. */
export const nameOf = (block: Instance): NameNode | undefined => block.node?.name ?? block.node?.kind;

/** The same for each occurrence of the same block, `let` or alias, in whatever file it stands; undefined for words. */
export function keyOf(meaning: Meaning): string | undefined {
  switch (meaning.type) {
    case "block": {
      const first = canonical(meaning.block);
      const name = nameOf(first);
      return name && `${first.file.uri}#${name.start}`;
    }
    case "let":
    case "alias":
      return `${meaning.file.uri}#${meaning.type} ${meaning.name}`;
    default:
      return undefined;
  }
}
