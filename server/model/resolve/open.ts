import type { BlockNode, EntryNode, StatementNode, WaiveNode } from "../../../grammar/tree";
import { kinds } from "../../../grammar/vocabulary";
import type { Problems } from "../problems";
import { already, single } from "../single";
import { withArticle } from "../words";
import { dropChildren, rivals } from "./copy";
import type { Instance } from "./instance";

function blank(node: BlockNode, key: string, parent: Instance): Instance {
  return {
    kind: node.kind.text, key, named: node.name !== undefined, node, parent, file: parent.file,
    children: new Map(), slots: new Map(), waives: [], state: "fresh",
  };
}

/** Takes up what stands in a block: its entries, waivers and child blocks (which stay fresh). */
export function openBody(
  owner: Instance, items: readonly (EntryNode | BlockNode | WaiveNode | StatementNode)[], problems: Problems,
): void {
  const seen = new Set<string>();
  for (const item of items) {
    if (item.type === "waive") owner.waives.push({ node: item, file: owner.file });
    else if (item.type === "entry") openEntry(owner, item, seen, problems);
    else if (item.type === "block") openChild(owner, item, seen, problems);
  }
}

function openEntry(owner: Instance, entry: EntryNode, seen: Set<string>, problems: Problems): void {
  if (!entry.equals && !entry.value) return;
  const name = entry.path.names.map((n) => n.text).join(".");
  if (seen.has(name)) {
    problems.add("name_twice", "error", owner.file, entry.path, `${name} is written twice in this block; keep one`);
    return;
  }
  seen.add(name);
  if (owner.copied) {
    for (const rival of rivals(owner.kind, name)) if (owner.slots.get(rival)?.home !== owner) owner.slots.delete(rival);
  }
  owner.slots.set(name, { entry, home: owner });
}

function openChild(owner: Instance, node: BlockNode, seen: Set<string>, problems: Problems): void {
  const key = node.name?.text ?? node.kind.text;
  const span = node.name ?? node.kind;
  const mark = `block ${key}`;
  if (seen.has(mark)) {
    const message = node.name
      ? `"${key}" is named twice here; blocks side by side need different names`
      : single.has(key) ? already(key) : `a second ${key} beside the first needs a name`;
    problems.add("name_twice", "error", owner.file, span, message);
    return;
  }
  seen.add(mark);
  const brought = owner.children.get(key);
  if (brought?.kind === node.kind.text && !node.from) return change(brought, node, owner, problems);
  if (brought && brought.kind !== node.kind.text && Object.hasOwn(kinds, node.kind.text)) {
    problems.add("name_twice", "error", owner.file, span,
      `"${key}" came with the copy and is ${withArticle(brought.kind)}; drop that one, or take another name`);
  }
  owner.children.set(key, blank(node, key, owner));
}

/** A child of the same kind and name as a copied one changes that one. */
function change(brought: Instance, node: BlockNode, owner: Instance, problems: Problems): void {
  Object.assign(brought, { node, file: owner.file });
  dropChildren(brought, node, problems);
  if (node.body) openBody(brought, node.body.items, problems);
}
