import type { NameNode } from "../../../grammar/tree";
import { findProperty } from "../../../grammar/vocabulary";
import type { Instance, SourceFile } from "../../model/resolve/instance";
import type { World } from "../../model/evaluate/site";
import type { Meaning, Occurrence } from "./meaning";

const at = (name: NameNode, meaning: Meaning): Occurrence => ({ start: name.start, end: name.end, meaning, declares: false });

/** A path to a block, sought from another outward; what follows it is a property or a value that follows from it. */
export function pathFrom(from: Instance, names: readonly NameNode[], world?: World): Occurrence[] {
  for (let around: Instance | undefined = from; around; around = around.parent) {
    const child = around.children.get(names[0].text);
    if (child) return pathInto(child, names, world);
  }
  return pathThroughAlias(from.file, names, world);
}

/** The same where the first name is a file's. */
function pathThroughAlias(file: SourceFile, names: readonly NameNode[], world?: World): Occurrence[] {
  const [head, ...rest] = names;
  if (!declaresAlias(file, head.text)) return [];
  const used = file.uses.get(head.text);
  const alias = at(head, { type: "alias", file, name: head.text, used });
  if (!used || rest.length === 0) return [alias];
  if (used.lets.has(rest[0].text)) return [alias, at(rest[0], { type: "let", file: used, name: rest[0].text })];
  return [alias, ...pathBelow(used.root, rest, world)];
}

export const declaresAlias = (file: SourceFile, name: string): boolean =>
  file.uses.has(name) || file.tree.items.some((item) => item.type === "use" && item.name?.text === name);

/** The same from one block down, without looking outward. */
export function pathBelow(root: Instance, names: readonly NameNode[], world?: World): Occurrence[] {
  const child = root.children.get(names[0].text);
  return child ? pathInto(child, names, world) : [];
}

function pathInto(first: Instance, names: readonly NameNode[], world?: World): Occurrence[] {
  const out = [at(names[0], { type: "block", block: first })];
  let block = first;
  for (const name of names.slice(1)) {
    const child = block.children.get(name.text);
    if (child) {
      out.push(at(name, { type: "block", block: child }));
      block = child;
    } else if (name.text === "right" || name.text === "left") {
      out.push(at(name, { type: "side", block, side: name.text }));
    } else {
      const value = valueOf(block, name.text, world);
      if (value) out.push(at(name, value));
      break;
    }
  }
  return out;
}

function valueOf(block: Instance, name: string, world?: World): Meaning | undefined {
  if (world?.derivedNames(block).includes(name)) return { type: "derived", block, name };
  const property = findProperty(block.kind, name);
  return property && { type: "property", property, block };
}
