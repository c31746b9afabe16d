import type { DimensionName } from "../../../grammar/units/dimension";
import { functions } from "../../../grammar/vocabulary";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Instance } from "../../model/resolve/instance";
import type { View } from "../view";
import { figureItems, loadingItems } from "./figures";
import type { Item } from "./item";
import { hasDimension, lets, numberItems, visibleItems } from "./numbers";
import type { ValuePlace } from "./place";
import type { Cursor } from "./scope";
import { blockOf, blocksOfKinds, type Named } from "./visible";
import { calledFunction, type Called } from "./wanted";

/** What may be an operand of the value at the cursor. */
export function operandItems(view: View, cursor: Cursor, place: ValuePlace, wanted: readonly DimensionName[]): Item[] {
  const from = blockOf(view, cursor.scope);
  const called = calledFunction(cursor);
  if (called) return argumentItems(view, from, called, wanted);
  const figures = place.figures ? [...figureItems(view), ...loadingItems(view, true)] : [];
  const form = place.property?.form;
  return [...figures, ...(form ? formItems(view, cursor, from, place.property!) : numberItems(view, from, wanted, place.statement === "let"))];
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
      return [...form.words.map((word) => wordItem(word, property, from.kind)), ...numberItems(view, from, [form.dimension], false)];
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
