import type { PathNode } from "../../../grammar/tree";
import { lineOf, type Instance } from "./instance";

export type Side = "right" | "left";

/** A block and, where it or what it stands in is made twice, which of the copies are meant. */
export interface BlockRef {
  readonly block: Instance;
  /** The block that the first name stands for. */
  readonly head: Instance;
  /** The full path with the sides that were named: `pods.right.drive`, `ail.left`. */
  readonly path: string;
  /** How many names of the path the block took; what follows reads a value of it. */
  readonly used: number;
}

const isSide = (name: string): name is Side => name === "right" || name === "left";

/** All names that a lookup from this block could find, for "did you mean"; of some kinds only, if they are named. */
export function namesAround(block: Instance, kinds?: readonly string[]): string[] {
  const names: string[] = [];
  for (let at: Instance | undefined = block; at; at = at.parent) {
    for (const child of at.children.values()) if (!kinds || kinds.includes(child.kind)) names.push(child.key);
    if (!at.parent && !kinds) names.push(...at.file.lets.keys(), ...at.file.uses.keys());
  }
  return names;
}

/**
 * Finds the block a path begins with: among the children of `from`, then outward to the file. Goes down as far as the
 * names are blocks; `right` and `left` pick one of a mirrored block's copies. `except` is never what is meant.
 */
export function findBlock(from: Instance, path: PathNode, except?: Instance): BlockRef | undefined {
  for (let at: Instance | undefined = from; at; at = at.parent) {
    const child = at.children.get(path.names[0].text);
    if (child && child !== except) return descend(child, path.names.map((n) => n.text));
  }
  return undefined;
}

/** The same for a path that begins with the name of a used file. */
export function findInUsed(from: Instance, path: PathNode): BlockRef | undefined {
  const [alias, ...names] = path.names.map((n) => n.text);
  const child = names.length > 0 ? from.file.uses.get(alias)?.root.children.get(names[0]) : undefined;
  const found = child && descend(child, names);
  return found && { ...found, used: found.used + 1 };
}

function descend(head: Instance, names: readonly string[]): BlockRef {
  const path = lineOf(head).map((block) => block.key);
  let at = head;
  let used = 1;
  for (; used < names.length; used++) {
    const child = at.children.get(names[used]);
    if (!child && !isSide(names[used])) break;
    if (child) at = child;
    path.push(names[used]);
  }
  return { block: at, head, path: path.join("."), used };
}

/** Which copies a path to a block names: of `pods.left.drive` the left one of `pods`. */
export function sidesNamed(block: Instance, path: string): ReadonlyMap<Instance, Side> {
  const sides = new Map<Instance, Side>();
  const names = path.split(".");
  const line = lineOf(block);
  let next = 0;
  line.forEach((at, i) => {
    next++;
    const name = names[next];
    if (name === undefined || !isSide(name) || line[i + 1]?.key === name) return;
    sides.set(at, name);
    next++;
  });
  return sides;
}
