import type { Position } from "vscode-languageserver-textdocument";
import { catalogue } from "../../../shared/catalogue";
import { offsetIn, type View } from "../view";
import { entryItems } from "./entries";
import { checkItems, dimensionOfName, figureItems, loadingItems } from "./figures";
import type { Item } from "./item";
import { blockItems, memberItems } from "./members";
import { placeOf, slotOf, type Place, type ValuePlace } from "./place";
import { cursorAt } from "./scan";
import type { Cursor } from "./scope";
import { keepsAway } from "./unasked";
import { unitItems } from "./units";
import { operandItems } from "./values";
import { blockOf, blocksOfKinds, target } from "./visible";
import { wantedDimensions } from "./wanted";

export interface Completion {
  readonly cursor: Cursor;
  readonly items: readonly Item[];
}

/**
 * What could stand at a position. Works from the pieces before it, so that half-typed text will do. `trigger`: the sign
 * whose typing asked for it, where the user didn't.
 */
export function complete(view: View, position: Position, trigger?: string): Completion | undefined {
  const cursor = cursorAt(view.parsed.pieces, offsetIn(view, position));
  if (!cursor) return undefined;
  const place = placeOf(cursor);
  if (keepsAway(trigger, cursor, place, place?.type === "value" ? dimensionsAt(cursor, place) : [])) return undefined;
  return { cursor, items: itemsAt(view, cursor, place) };
}

const dimensionsAt = (cursor: Cursor, place: ValuePlace) => wantedDimensions(cursor, place.property?.form, comparedDimension(place));

function itemsAt(view: View, cursor: Cursor, place: Place | undefined): readonly Item[] {
  switch (place?.type) {
    case "entry":
      return entryItems(view, cursor);
    case "words":
      return place.words.map((label): Item => ({ label, sort: "word", rank: 0, topic: { about: "statement", name: label } }));
    case "origin":
      return originItems(view, cursor, place.kind);
    case "check":
      return checkItems();
    case "loading":
      return loadingItems(view, false);
    case "value":
      return valueItems(view, cursor, place);
    case undefined:
      return dottedEntry(view, cursor);
  }
}

/** In `weighed`, a figure's name has dots. */
function dottedEntry(view: View, { before, scope, word }: Cursor): readonly Item[] {
  if (scope.kind !== "weighed" || before.at(-1)?.text !== ".") return [];
  const replace = { start: before[0].start, end: word.end };
  const prefix = before.map((piece) => piece.text).join("");
  return figureItems(view, replace).filter((item) => item.label.startsWith(prefix)).map((item) => ({ ...item, text: `${item.label} = ` }));
}

/** Blocks that can be copied: of the same kind, and for `place` an assembly. */
function originItems(view: View, cursor: Cursor, kind: string): Item[] {
  const copied = kind === "place" ? "assembly" : kind;
  const from = blockOf(view, cursor.scope);
  const path = cursor.before.slice(cursor.before.findIndex((piece) => piece.text === "from") + 1).filter((piece) => piece.text !== ".");
  if (path.length > 0) {
    const named = target(from, path.map((piece) => piece.text));
    if (!named) return [];
    const children = "file" in named ? [...named.file.root.children].map(([label, block]): Item => ({ label, sort: "block", rank: 0, detail: block.kind }))
      : blockItems(view, named.block, false);
    return children.filter((item) => item.detail === copied || item.detail === "assembly");
  }
  const own = cursor.before[1]?.text;
  const blocks = blocksOfKinds(from, [copied]).filter(({ path }) => path !== own).map(({ path: label, block }): Item =>
    ({ label, sort: "block", rank: 0, detail: block.kind, topic: { about: "block", name: label } }));
  return [...blocks, ...[...from.file.uses.keys()].map((label): Item => ({ label, sort: "file", rank: 1 }))];
}

function valueItems(view: View, cursor: Cursor, place: ValuePlace): readonly Item[] {
  const form = place.property?.form;
  const wanted = dimensionsAt(cursor, place);
  const slot = slotOf(place.tokens);
  switch (slot.type) {
    case "member":
      return memberItems(view, cursor, slot.names, form, place.figures);
    case "unit":
      return form?.form === "count" ? [] : [...unitItems(cursor, slot.written, wanted, view.system), ...afterItems(place, cursor)];
    case "operand":
      return operandItems(view, cursor, place, wanted);
    case "after":
      return afterItems(place, cursor);
  }
}

/** What a number in a condition is compared with. */
function comparedDimension({ statement, tokens, name }: ValuePlace) {
  if (statement === "entry") return dimensionOfName(name);
  const names = tokens.map((piece) => piece.text).join("");
  const figure = catalogue.filter((entry) => names.includes(entry.name)).sort((a, b) => b.name.length - a.name.length)[0];
  return statement === "require" ? figure?.dimension : undefined;
}

/** Keywords that may follow a whole operand. */
function afterItems({ property, tokens, statement }: ValuePlace, { brackets }: Cursor): Item[] {
  const word = (label: string): Item => ({ label, sort: "word", rank: 3, topic: { about: "statement", name: label } });
  if (brackets.length > 0) return [];
  const has = (text: string) => tokens.some((piece) => piece.text === text);
  const form = property?.form;
  const tapers = form?.form === "stretch" || (form?.form === "quantity" && form.taper) || form?.form === "section";
  if (tapers && !has("to")) return [word("to")];
  if (statement !== "require") return [];
  const compared = ["<", "<=", ">", ">=", "within"].some(has);
  return compared ? [word("for"), word("because")] : [word("within")];
}
