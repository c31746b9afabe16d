import { nearest } from "../../../grammar/nearest";
import type { PairNode, Span, ValueNode } from "../../../grammar/tree";
import { dimensions, sameDimension, type DimensionName } from "../../../grammar/units/dimension";
import { usualWord } from "../../../grammar/vocabulary";
import { usualUnits, wordsFor } from "../../../grammar/units/usual";
import { wordsOfForm, type Property } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Fix } from "../../../shared/finding";
import { rewrite, type TextCode } from "../problems";
import type { SourceFile } from "../resolve/instance";
import { nameOf } from "./expression";
import { sectionDigits } from "./section-digits";
import { bareNumber, massForForce, withoutUnit, wordsOf } from "./wording";

interface Misfit {
  readonly code: TextCode;
  readonly span: Span;
  readonly message: string;
  readonly fixes?: readonly Fix[];
}

/** Why a value doesn't fit its property, said where it is wrong, with the likely edit. */
export function misfit(property: Property, node: ValueNode, value: Value, expected: string, file: SourceFile): Misfit {
  const { form, name } = property;
  if (value.form === "word") return wrongWord(property, node, value.text, expected, file);
  const dimension = "dimension" in form ? form.dimension : undefined;
  const odd = dimension && oddPart(node, value, dimension);
  if (dimension && odd) return wrongQuantity(property, dimension, odd.node, odd.value, file);
  if (form.form === "stretch" && node.type === "pair" && expected.startsWith("goes")) return turnedRound(name, node, expected, file);
  const listed = value.form === "list" && node.type === "list" ? wrongItem(property, node.items, value.items) : undefined;
  const [place, wrong] = listed ?? [node, value];
  const text = wordsOf(place, file);
  const meant = form.form === "section" ? digitsMeant(place, wrong, file) : undefined;
  return {
    code: "wrong_value", span: place, message: `${name} ${expected}${meant ? `; did you mean ${meant}?` : instead(property, wrong, expected, text)}`,
    fixes: meant ? [rewrite(file, place, `Write ${meant}`, meant)] : undefined,
  };
}

/** What stands there instead, where the message doesn't say so itself. */
function instead({ form }: Property, wrong: Value, expected: string, text: string | undefined): string {
  if (expected.startsWith("must") || form.form === "count") return text ? `, not ${text}` : "";
  if (expected.startsWith("can't")) return text ? `; here it is ${text}` : "";
  if (wrong.form === "naca" || wrong.form === "flat" || !/^(takes|is) /.test(expected)) return "";
  return text ? `; ${text} is ${nameOf(wrong)}` : `, not ${nameOf(wrong)}`;
}

function turnedRound(name: string, { start, end, left, right }: PairNode, expected: string, file: SourceFile): Misfit {
  const say = (part: Span) => file.parsed.text.slice(part.start, part.end);
  const turned = `${say(right)} to ${say(left)}`;
  return {
    code: "wrong_value", span: { start, end }, message: `${name} ${expected}; did you mean ${turned}?`,
    fixes: [rewrite(file, { start, end }, `Write ${turned}`, turned)],
  };
}

/** A section's digits without the call around them. */
function digitsMeant(node: ValueNode, value: Value, file: SourceFile): string | undefined {
  const typed = value.form === "text" ? value.text : bareNumber(node) && file.parsed.text.slice(node.start, node.end);
  const digits = typed && sectionDigits(typed);
  return digits ? `naca("${digits}")` : undefined;
}

/** The first item of a list that is no block of the kinds wanted. */
function wrongItem(property: Property, nodes: readonly ValueNode[], values: readonly Value[]): readonly [ValueNode, Value] | undefined {
  const { form } = property;
  if (form.form !== "reference" && form.form !== "outputs") return undefined;
  for (const [i, value] of values.entries()) {
    const node = nodes[i];
    const inner = value.form === "list" && node.type === "list" ? wrongItem(property, node.items, value.items) : undefined;
    if (inner) return inner;
    const fits = value.form === "block" && (form.kinds.includes("*") || form.kinds.includes(value.block.kind));
    if (!fits && value.form !== "list" && value.form !== "word") return [node, value];
  }
  return undefined;
}

function wrongWord(property: Property, node: ValueNode, text: string, expected: string, file: SourceFile): Misfit {
  const { form, name } = property;
  const words = wordsOfForm(form);
  const known = words.length > 0 ? usualWord(property, text) ?? nearest(text, words) : undefined;
  const digits = form.form === "section" ? sectionDigits(text) : undefined;
  const near = form.form === "text" ? `"${text}"` : form.form === "flag" ? flags[text.toLowerCase()] : digits ? `naca("${digits}")` : known;
  const message = `${name} ${expected}; "${text}" is ${form.form === "word" || words.length > 1 ? "none of them" : "a word"}${near ? `; did you mean ${near}?` : ""}`;
  return { code: "wrong_value", span: node, message, fixes: near ? [rewrite(file, node, `Write ${near}`, near)] : undefined };
}

const flags: Readonly<Record<string, string>> = { true: "yes", on: "yes", y: "yes", false: "no", off: "no", n: "no", none: "no" };

type Measured = Extract<Value, { form: "quantity" }>;

/** The part of a value that has the wrong dimension: itself, or one end of a pair. */
function oddPart(node: ValueNode, value: Value, dimension: DimensionName): { node: ValueNode; value: Measured } | undefined {
  if (value.form === "quantity") {
    return sameDimension(value.quantity.dimension, dimensions[dimension]) ? undefined : { node, value };
  }
  if (value.form !== "pair" || node.type !== "pair") return undefined;
  return oddPart(node.left, value.left, dimension) ?? oddPart(node.right, value.right, dimension);
}

function wrongQuantity(property: Property, dimension: DimensionName, node: ValueNode, value: Measured, file: SourceFile): Misfit {
  const { words: wanted, metric } = usualUnits[dimension];
  const { name } = property;
  const bare = bareNumber(node);
  if (bare && dimension !== "ratio") {
    const { message, fixes } = withoutUnit([bare], metric[0], file);
    return { code: "missing_unit", span: node, message: `${name} takes ${wanted}: ${message}`, fixes };
  }
  const got = wordsFor(value.quantity.dimension);
  const swap = massForForce(node, dimensions[dimension], file);
  const text = wordsOf(node, file);
  const is = text ? `; ${text} is ${got}` : `, not ${got}`;
  return {
    code: "wrong_dimension", span: node, message: `${name} takes ${wanted}${is}${swap ? `; did you mean ${swap.text}?` : ""}`, fixes: swap && [swap.fix],
  };
}
