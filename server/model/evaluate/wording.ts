import type { Span, ValueNode } from "../../../grammar/tree";
import { dimensions, sameDimension, type Dimension, type DimensionName } from "../../../grammar/units/dimension";
import { combineUnits, unitSymbols } from "../../../grammar/units/units";
import { usualUnits } from "../../../grammar/units/usual";
import type { Fix } from "../../../shared/finding";
import { rewrite } from "../problems";
import type { SourceFile } from "../resolve/instance";

/** Longer stretches of the text are named by where the message stands. */
const longest = 30;

/** What the user wrote there, if it is short enough to be said back. */
export function wordsOf(node: Span, file: SourceFile): string | undefined {
  const text = file.parsed.text.slice(node.start, node.end).replace(/\s+/g, " ");
  return text.length <= longest ? text : undefined;
}

interface BareNumber extends Span {
  readonly text: string;
}

/** A number without a unit, with its sign. */
export function bareNumber(node: ValueNode): BareNumber | undefined {
  if (node.type === "quantity") return node.unit ? undefined : { start: node.start, end: node.end, text: node.number.text };
  const inner = node.type === "negate" ? bareNumber(node.inner) : undefined;
  return inner && { start: node.start, end: node.end, text: `-${inner.text}` };
}

/** The unit a bare number beside this value was likely meant in: that of the value, else the usual one. */
export function likelyUnit(dimension: Dimension, beside?: ValueNode): string | undefined {
  if (beside?.type === "quantity" && beside.unit) return beside.unit.text;
  if (sameDimension(dimension, dimensions.ratio)) return undefined;
  const name = (Object.keys(dimensions) as DimensionName[]).find((known) => sameDimension(dimensions[known], dimension));
  return name && usualUnits[name].metric[0];
}

/** Says that numbers lack their unit, and gives it to them. */
export function withoutUnit(numbers: readonly BareNumber[], unit: string, file: SourceFile): { message: string; fixes: readonly Fix[] } {
  const said = numbers.map(({ text }) => text).join(", ");
  const mended = numbers.map(({ text }) => `${text} ${unit}`).join(", ");
  const edits = numbers.map(({ start, end, text }) => ({ file: file.uri, start, end, text: `${text} ${unit}` }));
  return {
    message: `${said} ${numbers.length === 1 ? "has no unit" : "have no unit"}; did you mean ${mended}?`,
    fixes: [{ title: `Write ${mended}`, edits }],
  };
}

/** A mass as a force, or a force as a mass: gram and gram-force are taken for each other in daily speech. */
const twins: Readonly<Record<string, string>> = { g: "gf", kg: "kgf", oz: "ozf", lb: "lbf", gf: "g", kgf: "kg", ozf: "oz", lbf: "lb" };

/** The same number in the unit that was likely meant where mass and force are mixed up: `3.2 kgf*cm` for `3.2 kg*cm`. */
export function massForForce(node: ValueNode, wanted: Dimension, file: SourceFile): { text: string; fix: Fix } | undefined {
  if (node.type !== "quantity" || !node.unit) return undefined;
  const terms = node.unit.terms.map((term) => ({ ...term, symbol: twins[term.symbol] ?? term.symbol }));
  const swapped = combineUnits(terms);
  if ("unknown" in swapped || !sameDimension(swapped.dimension, wanted)) return undefined;
  const text = `${node.number.text} ${swappedText(node.unit.text)}`;
  return { text, fix: rewrite(file, node, `Write ${text}`, text) };
}

const swappedText = (unit: string) => unit.replace(/[A-Za-z]+/g, (symbol) => (unitSymbols.has(symbol) ? twins[symbol] ?? symbol : symbol));
