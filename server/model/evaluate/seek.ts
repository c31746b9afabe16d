import { nearest } from "../../../grammar/nearest";
import type { NamedNode, NameNode } from "../../../grammar/tree";
import { findProperty, kinds } from "../../../grammar/vocabulary";
import { rewrite } from "../problems";
import { pathOf, type Instance } from "../resolve/instance";
import { findBlock, findInUsed, namesAround, sidesNamed, type BlockRef } from "../resolve/names";
import type { Expression } from "./expression";
import { undeclared } from "./undeclared";

export const pathText = (node: NamedNode) => node.path.names.map((n) => n.text).join(".");

/** Is the word of its kind known? If not, that has been said, and what rests on it is no mistake of its own. */
export const isKnown = (block: Instance): boolean => Object.hasOwn(kinds, block.kind);

/** What a name is sought for: kinds that would fit, for "did you mean"; a block that can't be meant, the one that holds the property. */
interface Wish {
  readonly kinds?: readonly string[];
  readonly except?: Instance;
}

/**
 * The block a path names: sought from the block that holds the property, then outward to the file that copies; a
 * `material` or `foil` comes along from where it was written.
 */
export function seekBlock(node: NamedNode, at: Expression, wish: Wish = {}): BlockRef | undefined {
  const { path } = node;
  const { holder, home } = at.site;
  const whole = (ref: BlockRef | undefined) => (ref?.used === path.names.length ? ref : undefined);
  const here = findBlock(holder, path, wish.except);
  if (whole(here)) return meant(here!, node, at);
  for (let from: Instance | undefined = holder; from; from = from.copied) {
    const there = whole(from === holder ? undefined : findBlock(from, path)) ?? whole(findInUsed(from === holder ? home : from, path));
    if (!there) continue;
    return there.block.kind === "material" || there.block.kind === "foil" ? there : undeclared(there, node, at);
  }
  if (here) {
    const lost = path.names[here.used];
    return unknownName(at, lost, `${pathOf(here.block)} holds no "${lost.text}"`, [...here.block.children.keys()]);
  }
  return notHere(at, path.names[0], holder, wish.kinds);
}

/** The block itself, unless a copy of it is named that there is not, or it is only a plan. */
function meant(ref: BlockRef, node: NamedNode, at: Expression): BlockRef | undefined {
  if (!hasSides(ref, node, at)) return undefined;
  const plan = inPlan(ref.block);
  if (!plan || ref.block.kind === "material" || ref.block.kind === "foil" || isWithin(at.site.holder, plan)) return ref;
  const { root } = at.world.file;
  const place = [...root.children.values()].find((block) => block.kind === "place" && block.origin === plan);
  const placed = place && ref.path.replace(pathOf(plan), place.key);
  return at.complain("wrong_value", node,
    `${ref.path} stands in an assembly, which is only a plan until it is placed${placed ? `; did you mean ${placed}?` : ""}`,
    placed ? [rewrite(at.site.home.file, node, `Write ${placed}`, placed)] : undefined);
}

function inPlan(block: Instance): Instance | undefined {
  for (let at = block.parent; at; at = at.parent) if (at.kind === "assembly") return at;
  return undefined;
}

function isWithin(block: Instance, outer: Instance): boolean {
  for (let at: Instance | undefined = block; at; at = at.parent) if (at === outer) return true;
  return false;
}

/** `right` and `left` name the copies of a mirrored block only. */
export function hasSides(ref: BlockRef, node: NamedNode, at: Expression): boolean {
  for (const [block, side] of sidesNamed(ref.block, ref.path)) {
    const property = findProperty(block.kind, "mirror");
    if (property && at.world.read(block, property) === true) continue;
    const name = node.path.names.find((n) => n.text === side) ?? node;
    at.complain("unknown_name", name, `${pathOf(block)} has no ${side} one: it isn't mirrored`);
    return false;
  }
  return true;
}

/** Says that there is no such name around a block, with the nearest of the kinds that would fit, else of all. */
export function notHere(at: Expression, name: NameNode, from: Instance, wanted?: readonly string[]): undefined {
  const all = namesAround(from);
  const fitting = wanted && !wanted.includes("*") ? namesAround(from, wanted) : all;
  return unknownName(at, name, `there is no "${name.text}" here`, nearest(name.text, fitting) ? fitting : all);
}

export function unknownName(at: Expression, name: NameNode, message: string, candidates: readonly string[]): undefined {
  const near = nearest(name.text, candidates);
  return at.complain("unknown_name", name, near ? `${message}; did you mean ${near}?` : message,
    near ? [rewrite(at.site.home.file, name, `Write ${near}`, near)] : undefined);
}

