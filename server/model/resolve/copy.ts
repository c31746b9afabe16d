import type { BlockNode, EntryNode, NamedNode, PathNode, ValueNode } from "../../../grammar/tree";
import { kinds } from "../../../grammar/vocabulary";
import type { Problems } from "../problems";
import { descendants, type Instance } from "./instance";
import { noSuchBlock } from "./no-such-block";

/** More than any aircraft has; a text that copies copies of copies would otherwise grow without end. */
const mostCopied = 5000;

/** Takes over properties, waivers and children of the original, down to the last. */
export function copyInto(target: Instance, origin: Instance, from: PathNode, problems: Problems): void {
  const count = descendants(origin).length;
  if (count <= mostCopied) return copyAll(target, origin);
  problems.add("wrong_value", "error", target.file, from, `this would copy ${count} blocks at once; at most ${mostCopied} can be`);
}

function copyAll(target: Instance, origin: Instance): void {
  target.copied = origin;
  for (const [name, slot] of origin.slots) target.slots.set(name, slot);
  target.waives.push(...origin.waives);
  for (const [key, child] of origin.children) {
    const copy: Instance = {
      kind: child.kind, key, named: child.named, file: child.file, node: child.node, parent: target,
      children: new Map(), slots: new Map(), waives: [], state: "whole",
    };
    copyAll(copy, child);
    target.children.set(key, copy);
  }
}

/** Leaves out the children of a copy that `drop` names, before the block adds any of its own. */
export function dropChildren(block: Instance, node: BlockNode, problems: Problems): void {
  const entry = node.body?.items.find((item): item is EntryNode => item.type === "entry" && nameOf(item.path) === "drop");
  if (!entry) return;
  for (const name of namesIn(entry.value)) {
    if (block.children.delete(nameOf(name.path))) continue;
    const span = { start: name.start, end: name.end, text: nameOf(name.path) };
    noSuchBlock(block.file, span, `${block.key} brings no "${span.text}" that could be dropped`, [...block.children.keys()], problems);
  }
}

const nameOf = (path: PathNode) => path.names.map((n) => n.text).join(".");

function namesIn(value: ValueNode | undefined): NamedNode[] {
  if (value?.type === "named") return [value];
  return value?.type === "list" ? value.items.flatMap(namesIn) : [];
}

/** Properties of a kind that say the same as this one in another way: written anew, one replaces the others. */
export function rivals(kind: string, name: string): readonly string[] {
  const groups = Object.hasOwn(kinds, kind) ? kinds[kind].exclusive : [];
  return groups.filter((group) => group.includes(name)).flat().filter((other) => other !== name);
}
