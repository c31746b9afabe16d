import type { NamedNode } from "../../../grammar/tree";
import { isQuantity, quantity, type Quantity } from "../../../grammar/units/quantity";
import { dimensions } from "../../../grammar/units/dimension";
import { findProperty } from "../../../grammar/vocabulary";
import type { Value } from "../../../grammar/vocabulary/value";
import { entryOf } from "../../../shared/catalogue";
import type { Vec3 } from "../design/geometry";
import { pathOf, type SourceFile } from "../resolve/instance";
import { findBlock, findInUsed, type BlockRef } from "../resolve/names";
import { withArticle } from "../words";
import type { Expression } from "./expression";
import { sectionDigits } from "./section-digits";
import { hasSides, isKnown, notHere, pathText, seekBlock, unknownName } from "./seek";

/** A name standing for a word, a block or a value: what the property takes decides which. */
export function named(node: NamedNode, at: Expression): Value | undefined {
  const figure = at.figure?.(pathText(node), node);
  if (figure) return figure === "absent" ? undefined : { form: "quantity", quantity: figure };
  switch (at.form?.form) {
    case "word":
    case "names":
      return word(node);
    case "quantity":
      return standsForWord(node, at, at.form.words) ? word(node) : valueOf(node, at);
    case "flag":
    case "text":
      // Neither is ever named but by a `let`: what else stands here is a word that was meant as itself.
      return isLet(node, at) ? valueOf(node, at) : word(node);
    case "reference":
      return reference(node, at, at.form.kinds);
    case "outputs":
      return pathText(node) === "none" ? word(node) : reference(node, at, at.form.kinds);
    case "section":
      if (isLet(node, at)) return valueOf(node, at);
      return sectionDigits(pathText(node)) && !findBlock(at.site.holder, node.path) ? word(node) : reference(node, at, ["foil"]);
    default:
      return valueOf(node, at);
  }
}

const word = (node: NamedNode): Value => ({ form: "word", text: pathText(node) });

/** One of the words, or a slip of one: a single name that is nothing else here. */
function standsForWord(node: NamedNode, at: Expression, words: readonly string[]): boolean {
  if (words.length === 0 || node.path.names.length > 1) return false;
  return words.includes(pathText(node)) || !(isLet(node, at) || findBlock(at.site.home, node.path));
}

const isLet = ({ path }: NamedNode, at: Expression) => path.names.length === 1 && at.site.home.file.lets.has(path.names[0].text);

function reference(node: NamedNode, at: Expression, kinds: readonly string[]): Value | undefined {
  const found = seekBlock(node, at, { kinds, except: at.site.holder });
  if (!found || !isKnown(found.block)) return undefined;
  return { form: "block", block: { path: found.path, kind: found.block.kind, target: found.block } };
}

/** A `let`, or a value of a block: written (`nose.motor.kv`) or derived (`main.span`). Sought where it is written. */
function valueOf(node: NamedNode, at: Expression): Value | undefined {
  const { home } = at.site;
  const { names } = node.path;
  const block = findBlock(home, node.path) ?? findInUsed(home, node.path);
  if (block) return valueIn(block, node, at);
  if (home.file.lets.has(names[0].text)) return letIn(home.file, node, 0, at);
  const used = home.file.uses.get(names[0].text);
  if (used && names.length === 1) {
    return at.complain("wrong_value", node, `"${names[0].text}" is a file; name something in it, as in ${names[0].text}.main.span`);
  }
  if (used?.lets.has(names[1].text)) return letIn(used, node, 1, at);
  if (used) return unknownName(at, names[1], `${names[0].text} holds no "${names[1].text}"`, [...used.lets.keys(), ...used.root.children.keys()]);
  if (!at.figure && names.length > 1 && entryOf(pathText(node))) {
    return at.complain("unknown_name", node, `${pathText(node)} is a figure; figures are read in require, limits and weighed only`);
  }
  return notHere(at, names[0], home);
}

function letIn(file: SourceFile, node: NamedNode, index: number, at: Expression): Value | undefined {
  const name = node.path.names[index];
  const value = at.world.letValue(file, name.text);
  // What is wrong with it has been said, unless it stands in a file that is not being judged.
  if (!value && file !== at.world.file) at.complain("broken_file", name, `"${name.text}" has a mistake where it is written`);
  return coordinate(value, node, index + 1, at);
}

function valueIn(ref: BlockRef, node: NamedNode, at: Expression): Value | undefined {
  const { block, used } = ref;
  if (!isKnown(block) || !hasSides(ref, node, at)) return undefined;
  const name = node.path.names[used];
  const derived = at.world.derivedNames(block);
  if (!name) {
    const hint = [...derived, ...block.slots.keys()][0];
    return at.complain("wrong_value", node,
      `${pathText(node)} is ${withArticle(block.kind)}, and a value belongs here${hint ? `; ${pathText(node)}.${hint} is one` : ""}`);
  }
  if (derived.includes(name.text)) return coordinate(quantityValue(at.world.derived(block, name.text)), node, used + 1, at);
  const property = findProperty(block.kind, name.text);
  const read = property && at.world.read(block, property);
  if (read === undefined) {
    // A property that is written but broken has had its message.
    if (block.slots.has(name.text)) return undefined;
    const message = property ? `${name.text} is not written in ${pathOf(block)}; write it there, or a number here` : `${pathOf(block)} has no value "${name.text}"`;
    return unknownName(at, name, message, property ? [] : [...derived, ...block.slots.keys()]);
  }
  const value = readable(read);
  if (!value) return at.complain("wrong_value", node, `${pathText(node)} ${otherThanNumber(read)}, and a number or a point belongs here`);
  const seen = value.form === "point" && places.has(name.text) ? { ...value, point: at.world.seenFrom(ref, value.point, at.site.home) } : value;
  return coordinate(seen, node, used + 1, at);
}

/** Properties that are places, which look different from other axes; sizes don't. */
const places = new Set(["at", "start", "end"]);

const quantityValue = (q: Quantity | undefined): Value | undefined => q && { form: "quantity", quantity: q };

function readable(read: unknown): Extract<Value, { form: "quantity" | "point" }> | undefined {
  if (isQuantity(read)) return { form: "quantity", quantity: read };
  if (typeof read === "number") return { form: "quantity", quantity: quantity(read, dimensions.ratio) };
  if (!Array.isArray(read) || !read.every(isQuantity)) return undefined;
  if (read.length === 3) return { form: "point", point: read as unknown as Vec3<Quantity> };
  return read.length === 2 && read[0].value === read[1].value ? { form: "quantity", quantity: read[0] } : undefined;
}

const otherThanNumber = (read: unknown): string =>
  Array.isArray(read) && read.length === 2 ? "goes from one value to another" : typeof read === "boolean" ? "is yes or no"
    : typeof read === "string" ? "is a word or a text" : "is a name";

const axes = ["x", "y", "z"];

/** Reads `.x`, `.y` or `.z` of a point where the path goes on. */
function coordinate(value: Value | undefined, node: NamedNode, used: number, at: Expression): Value | undefined {
  const rest = node.path.names.slice(used);
  if (!value || rest.length === 0) return value;
  const axis = axes.indexOf(rest[0].text);
  if (value.form === "point" && axis >= 0 && rest.length === 1) return { form: "quantity", quantity: value.point[axis] };
  const whole = node.path.names.slice(0, used).map((n) => n.text).join(".");
  const what = value.form === "point" ? "is a point, which has .x, .y and .z" : "is a value and holds no others";
  return at.complain("unknown_name", rest[0], `"${rest[0].text}" can't be read here: ${whole} ${what}`);
}
