import type { PathNode } from "../../../grammar/tree";
import type { Instance } from "./instance";

/** A block and, where it or what it stands in is made twice, which of the copies are meant. */
export interface BlockRef {
  readonly block: Instance;
  /** The full path with the sides that were named: `pods.right.drive`, `ail.left`. */
  readonly path: string;
  /** How many names of the path the block took; what follows reads a value of it. */
  readonly used: number;
}

/** All names that a lookup from this block could find, for "did you mean". */
export function namesAround(block: Instance): string[] {
  const names: string[] = [];
  for (let at: Instance | undefined = block; at; at = at.parent) {
    names.push(...at.children.keys());
    if (!at.parent) names.push(...at.file.lets.keys(), ...at.file.uses.keys());
  }
  return names;
}

/**
 * Finds the block a path begins with: among the children of `from`, then outward to the file. Goes down as far as the
 * names are blocks; `right` and `left` pick one of a mirrored block's copies.
 */
export function findBlock(from: Instance, path: PathNode): BlockRef | undefined {
  const names = path.names.map((n) => n.text);
  for (let at: Instance | undefined = from; at; at = at.parent) {
    const child = at.children.get(names[0]);
    if (child) return descend(child, names, 1);
  }
  return undefined;
}

/** The same from one block down, without looking outward: for names after an alias. */
export function findBelow(root: Instance, names: readonly string[]): BlockRef | undefined {
  const child = root.children.get(names[0]);
  return child ? descend(child, names, 1) : undefined;
}

function descend(found: Instance, names: readonly string[], used: number): BlockRef {
  const path = [...ancestry(found)];
  let at = found;
  while (used < names.length) {
    const name = names[used];
    const child = at.children.get(name);
    if (child) {
      at = child;
      path.push(name);
    } else if (name === "right" || name === "left") path.push(name);
    else break;
    used++;
  }
  return { block: at, path: path.join("."), used };
}

function ancestry(block: Instance): string[] {
  return block.parent ? [...ancestry(block.parent), block.key] : [];
}
