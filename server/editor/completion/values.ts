import { dimensions, sameDimension, type DimensionName } from "../../../grammar/units/dimension";
import { functions, kinds } from "../../../grammar/vocabulary";
import type { Form, Property } from "../../../grammar/vocabulary/schema";
import type { Piece } from "../../../grammar/tree";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Instance } from "../../model/resolve/instance";
import { valueText } from "../hover/value-text";
import type { View } from "../view";
import { figureItems, loadingItems } from "./figures";
import type { Item } from "./item";
import type { ValuePlace } from "./place";
import type { Cursor } from "./scope";
import { blockOf, blocksOfKinds, visibleBlocks, type Named } from "./visible";

/** What may be an operand of the value at the cursor. */
export function operandItems(view: View, cursor: Cursor, place: ValuePlace, wanted: readonly DimensionName[]): Item[] {
  const from = blockOf(view, cursor.scope);
  const called = calledFunction(cursor);
  if (called) return argumentItems(view, from, called, wanted);
  const figures = place.figures ? [...figureItems(view), ...loadingItems(view, true)] : [];
  const form = place.property?.form;
  return [...figures, ...(form ? formItems(view, cursor, from, place.property!) : numberItems(view, from, wanted, place.statement === "let"))];
}

/** The function whose arguments the cursor stands among, and which of them. */
interface Called {
  readonly name: string;
  readonly argument: number;
}

function calledFunction({ before, brackets }: Cursor): Called | undefined {
  const open = brackets.at(-1);
  if (open?.text !== "(") return undefined;
  const at = before.indexOf(open);
  const name = before[at - 1]?.kind === "name" ? before[at - 1].text : undefined;
  if (name === undefined || !Object.hasOwn(functions, name)) return undefined;
  return { name, argument: commasIn(before.slice(at + 1)) };
}

/** Commas that are not within brackets of their own. */
function commasIn(pieces: readonly Piece[]): number {
  let depth = 0;
  let commas = 0;
  for (const { text } of pieces) {
    if (text === "(" || text === "[") depth++;
    else if (text === ")" || text === "]") depth--;
    else if (text === "," && depth === 0) commas++;
  }
  return commas;
}

const surfaces = ["wing", "tailplane", "canard", "fin"];

function argumentItems(view: View, from: Instance, { name, argument }: Called, wanted: readonly DimensionName[]): Item[] {
  if (name === "naca") return [];
  if (name === "point" && argument === 0) return blocksOfKinds(from, surfaces, view.set.loading.reader.world).map((each) => blockItem(view, each));
  return numberItems(view, from, wanted, false);
}

/** What the property's form asks for. */
function formItems(view: View, { brackets }: Cursor, from: Instance, property: Property): Item[] {
  const { form } = property;
  const { world } = view.set.loading.reader;
  switch (form.form) {
    case "word":
      return form.words.map((word) => wordItem(word, property, from.kind));
    case "flag":
      return ["yes", "no"].map((word) => wordItem(word, property, from.kind));
    case "text":
      return [{ label: '"…"', sort: "word", rank: 0, text: '""', snippet: '"$1"' }];
    case "reference":
      return blocksOfKinds(from, form.kinds, world).map((each) => blockItem(view, each));
    case "outputs": {
      const parts = blocksOfKinds(from, form.kinds, world).map((each) => blockItem(view, each));
      return brackets.length > 0 ? [...parts, wordItem("none", property, from.kind)] : [{ label: "[ … ]", sort: "word", rank: 0, text: "[]", snippet: "[$1]" }];
    }
    case "names":
      return [...(from.origin?.children ?? [])].map(([path, block]) => blockItem(view, { path, block }));
    case "section":
      return [...sectionItems(), ...lets(view, from, (value) => value.form === "naca" || value.form === "flat"),
        ...(form.blocks ? blocksOfKinds(from, ["foil"], world).map((each) => blockItem(view, each)) : [])];
    case "point":
      return brackets.length > 0 ? numberItems(view, from, ["length"], false) : pointItems(view, from, property);
    case "count":
      return lets(view, from, (value) => hasDimension(value, ["ratio"]));
    case "quantity":
    case "stretch":
      return numberItems(view, from, [form.dimension], false);
  }
}

const wordItem = (word: string, property: Property, kind: string): Item =>
  ({ label: word, sort: "word", rank: 0, topic: { about: "property", name: property.name, of: kind } });

const blockItem = (view: View, { path, block }: Named): Item => {
  const weight = view.set.get(`mass.${path}`);
  const detail = weight ? `${block.kind}, ${view.analysis.say(weight.quantity)}` : block.kind;
  return { label: path, sort: "block", rank: 0, detail, topic: { about: "block", name: path } };
};

const sectionItems = (): Item[] => [
  { label: "naca", sort: "function", rank: 0, text: 'naca("")', snippet: 'naca("${1:2412}")', detail: functions.naca.signature, topic: { about: "function", name: "naca" } },
  { label: "flat", sort: "function", rank: 1, text: "flat()", snippet: "flat(${1:3} %)", detail: functions.flat.signature, topic: { about: "function", name: "flat" } },
];

function pointItems(view: View, from: Instance, property: Property): Item[] {
  const [x = "0 mm", y = "0 mm", z = "0 mm"] = property.example.replace(/[()]/g, "").split(/,\s*/);
  return [
    { label: "(x, y, z)", sort: "word", rank: 0, text: "()", snippet: `(\${1:${x}}, \${2:${y}}, \${3:${z}})`, topic: { about: "property", name: property.name, of: from.kind } },
    { label: "point", sort: "function", rank: 0, text: "point()", snippet: "point(${1:main}, ${2:50} %, ${3:25} %)", detail: functions.point.signature, topic: { about: "function", name: "point" } },
    ...lets(view, from, (value) => value.form === "point"),
    ...visibleItems(from),
  ];
}

/** Lets that fit, blocks whose values can be read, files and functions. Any fits where the dimension isn't known. */
export function numberItems(view: View, from: Instance, wanted: readonly DimensionName[], isLet: boolean): Item[] {
  const fitting = lets(view, from, (value) => wanted.length === 0 || hasDimension(value, wanted) || value.form === "point");
  const calls = Object.keys(functions).filter((name) => isLet || !["naca", "flat", "point"].includes(name));
  return [
    ...fitting, ...visibleItems(from),
    ...calls.map((name): Item => ({
      label: name, sort: "function", rank: 4, text: `${name}()`, snippet: `${name}($1)`, detail: functions[name].signature, topic: { about: "function", name },
    })),
  ];
}

function lets(view: View, from: Instance, fits: (value: Value) => boolean): Item[] {
  const { world } = view.set.loading.reader;
  return [...from.file.lets.keys()].flatMap((name): Item[] => {
    const value = world.letValue(from.file, name);
    return value && fits(value) ? [{ label: name, sort: "let", rank: 1, detail: valueText(value, view.analysis.say), topic: { about: "let", name } }] : [];
  });
}

const hasDimension = (value: Value, wanted: readonly DimensionName[]): boolean =>
  value.form === "quantity" && wanted.some((name) => sameDimension(dimensions[name], value.quantity.dimension));

/** Blocks and files as the beginning of a path to a value. */
function visibleItems(from: Instance): Item[] {
  const blocks = [...visibleBlocks(from)].filter(([, block]) => block.kind !== "loading" && kinds[block.kind] !== undefined)
    .map(([name, block]): Item => ({ label: name, sort: "block", rank: 3, detail: block.kind, topic: { about: "block", name } }));
  return [...blocks, ...[...from.file.uses.keys()].map((name): Item => ({ label: name, sort: "file", rank: 3 }))];
}

/** The dimensions a number at the cursor may have; none where nothing is known. */
export function wantedDimensions(cursor: Cursor, form: Form | undefined, compared: DimensionName | undefined): readonly DimensionName[] {
  const called = calledFunction(cursor);
  if (called) return inCall(called, form);
  if (form?.form === "point") return ["length"];
  const own = form?.form === "quantity" || form?.form === "stretch" ? form.dimension : compared;
  if (own === undefined) return [];
  const tolerance = cursor.before.some((piece) => piece.text === "±" || piece.text === "+-");
  return tolerance ? [own, "ratio"] : [own];
}

function inCall({ name, argument }: Called, form: Form | undefined): readonly DimensionName[] {
  if (name === "flat" || (name === "point" && argument > 0)) return ["ratio"];
  if (["sin", "cos", "tan"].includes(name)) return ["angle"];
  const same = ["abs", "min", "max", "round"].includes(name) && (form?.form === "quantity" || form?.form === "stretch");
  return same ? [form.dimension] : [];
}
