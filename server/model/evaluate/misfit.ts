import { nearest } from "../../../grammar/nearest";
import type { Span, ValueNode } from "../../../grammar/tree";
import { dimensionName, dimensions, sameDimension, type DimensionName } from "../../../grammar/units/dimension";
import { usualWord } from "../../../grammar/vocabulary";
import { usualUnits } from "../../../grammar/units/usual";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Fix } from "../../../shared/finding";
import { rewrite, type TextCode } from "../problems";
import type { SourceFile } from "../resolve/instance";

interface Misfit {
  readonly code: TextCode;
  readonly span: Span;
  readonly message: string;
  readonly fixes?: readonly Fix[];
}

/** Why a value doesn't fit its property, said where it is wrong, with the likely edit. */
export function misfit(property: Property, node: ValueNode, value: Value, expected: string, file: SourceFile): Misfit {
  const { form } = property;
  if (form.form === "word" && value.form === "word") return wrongWord(property, form.words, node, value.text, file);
  const dimension = "dimension" in form ? form.dimension : undefined;
  const odd = dimension ? oddPart(node, value, dimension) : undefined;
  if (dimension && odd) return wrongQuantity(property, dimension, odd.node, odd.value, file);
  if (value.form === "block" && form.form === "reference") {
    return { code: "wrong_value", span: node, message: `${property.name} ${expected}; ${value.block.path} is a ${value.block.kind}` };
  }
  return { code: "wrong_value", span: node, message: `${property.name} ${expected}${instead(property, value)}` };
}

function wrongWord(property: Property, words: readonly string[], node: ValueNode, text: string, file: SourceFile): Misfit {
  const near = usualWord(property, text) ?? nearest(text, words);
  const message = `${property.name} is one of ${words.join(", ")}; "${text}" is none of them${near ? `; did you mean ${near}?` : ""}`;
  return { code: "wrong_value", span: node, message, fixes: near ? [rewrite(file, node, `Write ${near}`, near)] : undefined };
}

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
  if (sameDimension(value.quantity.dimension, dimensions.ratio)) {
    const unit = metric[0];
    const typed = node.type === "quantity" ? node.number.text : undefined;
    if (!typed || !unit || (node.type === "quantity" && node.unit)) {
      return { code: "wrong_dimension", span: node, message: `${name} takes ${wanted}, not a plain number` };
    }
    return {
      code: "missing_unit", span: node,
      message: `${name} takes ${wanted}: ${typed} has no unit; did you mean ${typed} ${unit}?`,
      fixes: [rewrite(file, node, `Write ${typed} ${unit}`, `${typed} ${unit}`)],
    };
  }
  const got = dimensionName(value.quantity.dimension);
  const swap = node.type === "quantity" && node.unit ? massForForce(dimension, node.unit.text) : undefined;
  const message = `${name} takes ${wanted}, not a ${got}${swap ? `; did you mean ${swap}?` : ""}`;
  const fixes = swap && node.type === "quantity" ? [rewrite(file, node, `Write ${node.number.text} ${swap}`, `${node.number.text} ${swap}`)] : undefined;
  return { code: "wrong_dimension", span: node, message, fixes };
}

/** Gram and gram-force are taken for each other in daily speech. */
function massForForce(wanted: DimensionName, unit: string): string | undefined {
  const pairs = [["g", "gf"], ["kg", "kgf"], ["oz", "ozf"], ["lb", "lbf"]];
  if (wanted === "mass") return unit === "N" ? undefined : pairs.find(([, force]) => force === unit)?.[0];
  if (wanted === "force") return pairs.find(([mass]) => mass === unit)?.[1];
  return undefined;
}

function instead(property: Property, value: Value): string {
  if (value.form === "quantity" && property.form.form !== "quantity" && property.form.form !== "count") {
    return sameDimension(value.quantity.dimension, dimensions.ratio) ? ", not a number" : `, not a ${dimensionName(value.quantity.dimension)}`;
  }
  const words: Partial<Record<Value["form"], string>> = {
    text: "text", flag: "yes or no", point: "a point", pair: "two values", list: "a list", naca: "a section", flat: "a section", block: "a block",
  };
  return words[value.form] ? `, not ${words[value.form]}` : "";
}
