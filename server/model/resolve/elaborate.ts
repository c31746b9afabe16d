import type { PathNode } from "../../../grammar/tree";
import { kinds } from "../../../grammar/vocabulary";
import type { Problems } from "../problems";
import { withArticle } from "../words";
import { copyInto, dropChildren } from "./copy";
import { descendants, type Instance } from "./instance";
import { noSuchBlock } from "./no-such-block";
import { openBody } from "./open";

const written = (path: PathNode) => path.names.map((n) => n.text).join(".");

/** Works a block out: what `from` brings, then what it says itself. Children stay fresh until asked for. */
export function elaborate(block: Instance, problems: Problems): void {
  const { node } = block;
  if (block.state !== "fresh" || !node) return;
  block.state = "busy";
  const origin = node.from && lookUp(block, node.from, problems);
  if (node.from && origin) bring(block, origin, node.from, problems);
  if (block.copied) dropChildren(block, node, problems);
  if (node.body) openBody(block, node.body.items, problems);
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
    // A word that isn't known has a message of its own.
    if (![block.kind, origin.kind].every((kind) => Object.hasOwn(kinds, kind))) return;
    const what = block.kind === "place" ? "place puts an assembly" : `${withArticle(block.kind)} is copied from another ${block.kind}`;
    problems.add("wrong_value", "error", block.file, from, `${what}; ${written(from)} is ${withArticle(origin.kind)}`);
    return;
  }
  elaborateAll(origin, problems);
  if (isBusy(origin)) {
    problems.add("circle", "error", block.file, from,
      `${block.key} can't be copied from ${written(from)}, which is made of ${block.key} itself; a copy can't go round in a circle`);
    return;
  }
  block.origin = origin;
  copyInto(block, origin, from, problems);
}

/** Is it, or anything in it, still being worked out: on the way to this very copy? */
const isBusy = (origin: Instance) => origin.state === "busy" || descendants(origin).some((block) => block.state === "busy");

/** The block that `from` names: among the siblings first, then outward, then in the files used; never the block itself. */
function lookUp(block: Instance, path: PathNode, problems: Problems): Instance | undefined {
  const [head, ...rest] = path.names;
  const { file } = block;
  let found = sought(block, head.text) ?? file.uses.get(head.text)?.root;
  if (!found) {
    if (head.text === block.key) {
      problems.add("circle", "error", file, path, `${block.key} can't be copied from itself`);
      return undefined;
    }
    return noSuchBlock(file, head, `there is no block "${head.text}" here`, namesBeside(block), problems);
  }
  for (const name of rest) {
    elaborate(found, problems);
    const next: Instance | undefined = found.children.get(name.text);
    if (!next) return noSuchBlock(file, name, `${found.key || head.text} holds no "${name.text}"`, [...found.children.keys()], problems);
    found = next;
  }
  if (found.parent) return found;
  problems.add("wrong_value", "error", file, path, `${head.text} is a file; name the ${block.kind} in it, as in ${head.text}.${block.key}`);
  return undefined;
}

function sought(block: Instance, name: string): Instance | undefined {
  for (let at = block.parent; at; at = at.parent) {
    const child = at.children.get(name);
    if (child && child !== block) return child;
  }
  return undefined;
}

function namesBeside(block: Instance): string[] {
  const names = [...block.file.uses.keys()];
  for (let at = block.parent; at; at = at.parent) {
    for (const child of at.children.values()) if (child !== block) names.push(child.key);
  }
  return names;
}
