import { nearest } from "../../../grammar/nearest";
import type { NamedNode } from "../../../grammar/tree";
import type { Value } from "../../../grammar/vocabulary/value";
import { findProperty } from "../../../grammar/vocabulary";
import { isQuantity, type Quantity } from "../../../grammar/units/quantity";
import { rewrite } from "../problems";
import type { Instance } from "../resolve/instance";
import { pathOf } from "../resolve/instance";
import { findBelow, findBlock, namesAround, type BlockRef } from "../resolve/names";
import type { Expression } from "./expression";
import type { Vec3 } from "../design/geometry";

const text = (node: NamedNode) => node.path.names.map((n) => n.text).join(".");

/** A name standing for a word, a block or a value: what the property takes decides which. */
export function named(node: NamedNode, at: Expression): Value | undefined {
  const figure = at.figure?.(text(node), node);
  if (figure) return figure === "absent" ? undefined : { form: "quantity", quantity: figure };
  const form = at.form?.form;
  if (form === "word" || form === "names") return { form: "word", text: text(node) };
  if (form === "outputs" && text(node) === "none") return { form: "word", text: "none" };
  if (form === "reference" || form === "outputs") return reference(node, at);
  if (form === "section") return sectionName(node, at);
  return valueOf(node, at);
}

function reference(node: NamedNode, at: Expression): Value | undefined {
  const found = seekBlock(node, at);
  if (!found) return undefined;
  return { form: "block", block: { path: found.path, kind: found.block.kind, target: found.block } };
}

/** A `let` may hold a section too; else the name is a `foil` block's. */
function sectionName(node: NamedNode, at: Expression): Value | undefined {
  const { file } = at.site.home;
  if (node.path.names.length === 1 && file.lets.has(text(node))) return at.world.letValue(file, text(node));
  return reference(node, at);
}

/**
 * The block a path names: sought from the block that holds the property, then outward to the file that copies; a
 * `material` or `foil` comes along from where it was written.
 */
export function seekBlock(node: NamedNode, at: Expression): BlockRef | undefined {
  const { path } = node;
  const { holder, home } = at.site;
  const here = findBlock(holder, path);
  if (here?.used === path.names.length) return here;
  const there = findBlock(home, path) ?? throughAlias(node, home);
  const comes = there?.used === path.names.length && (there.block.kind === "material" || there.block.kind === "foil");
  if (there && comes) return there;
  if (there && there.used === path.names.length && home.file !== at.world.file) {
    at.complain("not_declared_here", path,
      `what was copied needs ${there.block.kind} "${there.path}", which has weight of its own and must be declared in this file`);
    return undefined;
  }
  if (here && here.used < path.names.length) {
    const lost = path.names[here.used];
    return unknown(at, lost, `${pathOf(here.block)} holds no "${lost.text}"`, [...here.block.children.keys()]);
  }
  return unknown(at, path.names[0], `there is no "${path.names[0].text}" here`, namesAround(holder));
}

function throughAlias(node: NamedNode, home: Instance): BlockRef | undefined {
  const [head, ...rest] = node.path.names.map((n) => n.text);
  const file = home.file.uses.get(head);
  const found = file && rest.length > 0 ? findBelow(file.root, rest) : undefined;
  return found && { ...found, used: found.used + 1 };
}

function unknown(at: Expression, span: { start: number; end: number; text: string }, message: string, candidates: readonly string[]): undefined {
  const near = nearest(span.text, candidates);
  const { world, site } = at;
  const fixes = near ? [rewrite(site.home.file, span, `Write ${near}`, near)] : undefined;
  const whole = near ? `${message}; did you mean ${near}?` : message;
  world.problems.addFor(site.holder, "unknown_name", site.home.file, span, whole, fixes);
  return undefined;
}

/** A `let`, or a value of a block: written (`nose.motor.kv`) or derived (`main.span`). Worked out where it is written. */
function valueOf(node: NamedNode, at: Expression): Value | undefined {
  const { home } = at.site;
  const names = node.path.names;
  const head = names[0].text;
  const block = findBlock(home, node.path) ?? throughAlias(node, home);
  if (!block && home.file.lets.has(head)) return coordinate(at.world.letValue(home.file, head), node, 1, at);
  if (!block) {
    const file = home.file.uses.get(head);
    if (file && names.length > 1 && file.lets.has(names[1].text)) return coordinate(at.world.letValue(file, names[1].text), node, 2, at);
    return unknown(at, names[0], `there is no "${head}" here`, namesAround(home));
  }
  const property = names[block.used];
  if (!property) {
    const derived = at.world.derivedNames(block.block);
    return at.complain("wrong_value", node, `"${text(node)}" is a ${block.block.kind}, and a value belongs here` +
      (derived.length ? `; ${text(node)}.${derived[0]} is one` : ""));
  }
  return coordinate(valueIn(block.block, property.text, at), node, block.used + 1, at) ?? noValue(block, node, at);
}

function valueIn(block: Instance, name: string, at: Expression): Value | undefined {
  const derived = at.world.derived(block, name);
  if (derived) return isQuantity(derived) ? { form: "quantity", quantity: derived } : { form: "point", point: derived as Vec3<Quantity> };
  const property = findProperty(block.kind, name);
  const read = property && at.world.read(block, property);
  if (isQuantity(read)) return { form: "quantity", quantity: read };
  if (typeof read === "number") return undefined;
  if (Array.isArray(read) && read.length === 3 && read.every(isQuantity)) return { form: "point", point: read as unknown as Vec3<Quantity> };
  if (Array.isArray(read) && read.length === 2 && read.every(isQuantity) && read[0].value === read[1].value) {
    return { form: "quantity", quantity: read[0] };
  }
  return undefined;
}

function noValue(ref: BlockRef, node: NamedNode, at: Expression): undefined {
  const name = node.path.names[ref.used];
  const { block } = ref;
  // A property that is written but broken has had its message.
  if (block.slots.has(name.text)) return undefined;
  const readable = [...at.world.derivedNames(block), ...block.slots.keys()];
  return unknown(at, name, `${pathOf(block)} has no value "${name.text}"`, readable);
}

const axes = ["x", "y", "z"];

/** Reads `.x`, `.y` or `.z` of a point where the path goes on. */
function coordinate(value: Value | undefined, node: NamedNode, used: number, at: Expression): Value | undefined {
  const rest = node.path.names.slice(used);
  if (!value || rest.length === 0) return value;
  const axis = axes.indexOf(rest[0].text);
  if (value.form === "point" && axis >= 0 && rest.length === 1) return { form: "quantity", quantity: value.point[axis] };
  return at.complain("unknown_name", rest[0], `"${rest[0].text}" can't be read here; a point has .x, .y and .z`);
}
