import { kinds } from "../../../grammar/vocabulary";
import type { World } from "../../model/evaluate/site";
import type { Instance, SourceFile } from "../../model/resolve/instance";
import type { View } from "../view";
import type { Scope } from "./scope";

/** The block that a scope is, or the nearest around it that the model knows. */
export function blockOf(view: View, scope: Scope): Instance {
  const names: string[] = [];
  for (let at: Scope | undefined = scope; at?.parent; at = at.parent) names.unshift(at.name ?? at.kind);
  let block = view.analysis.model.file.root;
  for (const name of names) block = block.children.get(name) ?? block;
  return block;
}

/** Blocks that can be named from a block, by name; the nearest of each name. */
export function visibleBlocks(from: Instance): ReadonlyMap<string, Instance> {
  const found = new Map<string, Instance>();
  for (let at: Instance | undefined = from; at; at = at.parent) {
    for (const [name, block] of at.children) if (!found.has(name)) found.set(name, block);
  }
  return found;
}

/** A block that can be named, by the path that names it. */
export interface Named {
  readonly path: string;
  readonly block: Instance;
}

/** All blocks of some kinds (`*`: any part) that can be named from a block, with those within others; by each side with `world`. */
export function blocksOfKinds(from: Instance, wanted: readonly string[], world?: World): Named[] {
  const fits = (block: Instance) => (wanted.includes("*") ? kinds[block.kind]?.massive === true : wanted.includes(block.kind));
  const out: Named[] = [];
  const take = (path: string, block: Instance, depth: number): void => {
    if (fits(block)) out.push(...(world ? sides(path, block, world) : [{ path, block }]));
    if (depth < 2 && block.kind !== "loading") for (const [name, child] of block.children) take(`${path}.${name}`, child, depth + 1);
  };
  for (const [name, block] of visibleBlocks(from)) if (block !== from && block.kind !== "loading") take(name, block, 0);
  if (wanted.includes("loading")) for (const [path, block] of visibleBlocks(from)) if (block.kind === "loading") out.push({ path, block });
  return out;
}

/** A mirrored block, and each of its two copies. */
function sides(path: string, block: Instance, world: World): Named[] {
  return isMirrored(block, world) ? [path, `${path}.right`, `${path}.left`].map((each) => ({ path: each, block })) : [{ path, block }];
}

export function isMirrored(block: Instance, world: World): boolean {
  const property = kinds[block.kind]?.properties.mirror;
  return property !== undefined && world.read(block, property) === true;
}

/** What a path means so far: a block, a file, or nothing known. */
export function target(from: Instance, names: readonly string[]): { readonly block: Instance } | { readonly file: SourceFile } | undefined {
  let block = visibleBlocks(from).get(names[0]);
  let rest = names.slice(1);
  if (!block) {
    const file = from.file.uses.get(names[0]);
    if (!file || rest.length === 0) return file && { file };
    block = file.root.children.get(rest[0]);
    rest = rest.slice(1);
  }
  for (const name of rest) block = name === "right" || name === "left" ? block : block?.children.get(name);
  return block && { block };
}
