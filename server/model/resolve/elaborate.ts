import type { BlockNode, EntryNode, NamedNode, PathNode, StatementNode, ValueNode, WaiveNode } from "../../../grammar/tree";
import { rewrite, type Problems } from "../problems";
import type { Instance } from "./instance";
import { nearest } from "../../../grammar/nearest";
import { namesAround } from "./names";

const written = (path: PathNode) => path.names.map((n) => n.text).join(".");

function blank(kind: string, key: string, named: boolean, node: BlockNode, parent: Instance): Instance {
  return {
    kind, key, named, node, parent, file: parent.file,
    children: new Map(), slots: new Map(), waives: [], state: "fresh",
  };
}

/** Takes up what stands in a block: its entries, waivers and child blocks (which stay fresh). */
export function openBody(
  owner: Instance, items: readonly (EntryNode | BlockNode | WaiveNode | StatementNode)[], problems: Problems,
): void {
  const written = new Set<string>();
  for (const item of items) {
    if (item.type === "waive") owner.waives.push(item);
    else if (item.type === "entry") openEntry(owner, item, written, problems);
    else if (item.type === "block") openChild(owner, item, written, problems);
  }
}

function openEntry(owner: Instance, entry: EntryNode, seen: Set<string>, problems: Problems): void {
  if (!entry.equals && !entry.value) return;
  const name = written(entry.path);
  if (seen.has(name)) {
    problems.add("name_twice", "error", owner.file, entry.path, `${name} is written twice in this block; keep one`);
    return;
  }
  seen.add(name);
  owner.slots.set(name, { entry, home: owner });
}

function openChild(owner: Instance, node: BlockNode, seen: Set<string>, problems: Problems): void {
  const key = node.name?.text ?? node.kind.text;
  const mark = `block ${key}`;
  if (seen.has(mark)) {
    const message = node.name
      ? `"${key}" is named twice; names of blocks side by side must differ`
      : `a second ${key} beside the first needs a name`;
    problems.add("name_twice", "error", owner.file, node.name ?? node.kind, message);
    return;
  }
  seen.add(mark);
  const brought = owner.children.get(key);
  // A child of the same name as a copied one changes that one; anything else is new.
  if (brought?.kind === node.kind.text && !node.from) {
    Object.assign(brought, { node, file: owner.file });
    if (node.body) openBody(brought, node.body.items, problems);
    dropChildren(brought, problems);
    return;
  }
  owner.children.set(key, blank(node.kind.text, key, node.name !== undefined, node, owner));
}

/** Works a block out: what `from` brings, then what it says itself. Children stay fresh until asked for. */
export function elaborate(block: Instance, problems: Problems): void {
  if (block.state !== "fresh" || !block.node) return;
  block.state = "busy";
  const node = block.node;
  if (node.from) {
    const origin = lookUp(block, node.from, problems);
    if (origin) bring(block, origin, node.from, problems);
  }
  if (node.body) openBody(block, node.body.items, problems);
  dropChildren(block, problems);
  block.state = "whole";
}

/** Elaborates everything below, so that each mistake is met. */
export function elaborateAll(root: Instance, problems: Problems): void {
  elaborate(root, problems);
  for (const child of root.children.values()) elaborateAll(child, problems);
}

function bring(block: Instance, origin: Instance, from: PathNode, problems: Problems): void {
  const copies = block.kind === "place" ? "assembly" : block.kind;
  if (origin.kind !== copies) {
    const what = block.kind === "place" ? "place puts an assembly" : `a ${block.kind} can be copied from a ${block.kind} only`;
    problems.add("wrong_value", "error", block.file, from, `${what}; ${written(from)} is a ${origin.kind}`);
    return;
  }
  elaborateAll(origin, problems);
  block.origin = origin;
  copyInto(block, origin);
}

function copyInto(target: Instance, origin: Instance): void {
  for (const [name, slot] of origin.slots) target.slots.set(name, slot);
  target.waives.push(...origin.waives);
  for (const [key, child] of origin.children) {
    const copy: Instance = {
      kind: child.kind, key, named: child.named, file: child.file, node: child.node, parent: target,
      children: new Map(), slots: new Map(), waives: [], state: "whole",
    };
    copyInto(copy, child);
    target.children.set(key, copy);
  }
}

function lookUp(block: Instance, path: PathNode, problems: Problems): Instance | undefined {
  const [head, ...rest] = path.names;
  let found = sought(block, head.text, problems);
  const alias = found ? undefined : block.file.uses.get(head.text);
  if (alias) found = alias.root;
  if (!found) {
    unknown(block, head, namesAround(block), problems);
    return undefined;
  }
  for (const name of rest) {
    elaborate(found, problems);
    const next: Instance | undefined = found.children.get(name.text);
    if (!next) {
      unknown(block, name, [...found.children.keys()], problems);
      return undefined;
    }
    found = next;
  }
  if (found.state === "busy") {
    problems.add("circle", "error", block.file, path, `${written(path)} is being copied from itself; a copy can't go round in a circle`);
    return undefined;
  }
  return found.parent ? found : undefined;
}

/** Among the siblings first, then outward; never the block itself. */
function sought(block: Instance, name: string, problems: Problems): Instance | undefined {
  for (let at = block.parent; at; at = at.parent) {
    const child = at.children.get(name);
    if (!child || child === block) continue;
    if (!child.parent) return undefined;
    if (child.state !== "busy") elaborate(child, problems);
    return child;
  }
  return undefined;
}

function unknown(block: Instance, name: { text: string; start: number; end: number }, candidates: readonly string[], problems: Problems): void {
  const near = nearest(name.text, candidates);
  const message = `there is no block "${name.text}" here${near ? `; did you mean ${near}?` : ""}`;
  problems.add("unknown_name", "error", block.file, name, message, near ? [rewrite(block.file, name, `Write ${near}`, near)] : undefined);
}

function dropChildren(block: Instance, problems: Problems): void {
  const slot = block.slots.get("drop");
  if (!slot || slot.home !== block) return;
  for (const name of namesIn(slot.entry.value)) {
    const key = written(name.path);
    if (block.children.delete(key)) continue;
    unknown(block, { text: key, start: name.start, end: name.end }, [...block.children.keys()], problems);
  }
}

function namesIn(value: ValueNode | undefined): NamedNode[] {
  if (value?.type === "named") return [value];
  return value?.type === "list" ? value.items.flatMap(namesIn) : [];
}
