import type { Piece } from "../../../grammar/tree";
import type { Form } from "../../../grammar/vocabulary/schema";
import type { Instance, SourceFile } from "../../model/resolve/instance";
import type { View } from "../view";
import { figureItems } from "./figures";
import type { Item } from "./item";
import type { Cursor } from "./scope";
import { blockOf, isMirrored, target } from "./visible";

/** What may follow the dot: children, copies and values of a block, names of a file, coordinates, figures. */
export function memberItems(view: View, cursor: Cursor, names: readonly Piece[], form: Form | undefined, figures: boolean): Item[] {
  if (names.length === 0) return [];
  const texts = names.map((piece) => piece.text);
  const found = figures ? figuresAfter(view, cursor, names) : [];
  const from = blockOf(view, cursor.scope);
  const named = target(from, texts);
  const takesBlock = form?.form === "reference" || form?.form === "outputs";
  if (named && "file" in named) return [...found, ...fileItems(named.file)];
  if (named) return [...found, ...blockItems(view, named.block, !takesBlock)];
  const isLet = from.file.lets.has(texts[0]) && texts.length === 1;
  return [...found, ...(isLet ? coordinates() : [])];
}

/** Figures by their whole name, in the place of what stands of it; a loading's name before them stays. */
function figuresAfter(view: View, { word }: Cursor, names: readonly Piece[]): Item[] {
  const loading = view.analysis.sets.find((set) => set.loading.block !== undefined && set.loading.name === names[0].text)?.loading.name;
  const own = loading === undefined ? names : names.slice(1);
  const prefix = own.map((piece) => `${piece.text}.`).join("");
  const replace = { start: own[0]?.start ?? word.start, end: word.end };
  return figureItems(view, replace, loading).filter((item) => item.label.startsWith(prefix));
}

function fileItems(file: SourceFile): Item[] {
  return [
    ...[...file.root.children].map(([name, block]): Item => ({ label: name, sort: "block", rank: 0, detail: block.kind })),
    ...[...file.lets.keys()].map((name): Item => ({ label: name, sort: "let", rank: 1 })),
  ];
}

/** For `from` and references: only blocks. */
export function blockItems(view: View, block: Instance, values: boolean): Item[] {
  const { world } = view.set.loading.reader;
  const children = [...block.children].map(([name, child]): Item => ({ label: name, sort: "block", rank: 1, detail: child.kind }));
  const sides = isMirrored(block, world) ? ["right", "left"].map((label): Item => ({ label, sort: "block", rank: 0 })) : [];
  if (!values) return [...sides, ...children];
  const derived = world.derivedNames(block).map((label): Item => ({ label, sort: "property", rank: 0, detail: "follows from the block" }));
  const written = [...block.slots.keys()].filter((name) => !name.includes("."))
    .map((label): Item => ({ label, sort: "property", rank: 0, topic: { about: "property", name: label, of: block.kind } }));
  const known = new Set(derived.map((item) => item.label));
  return [...derived, ...written.filter((item) => !known.has(item.label)), ...children];
}

const coordinates = (): Item[] => ["x", "y", "z"].map((label): Item => ({ label, sort: "property", rank: 0, detail: "coordinate of a point" }));
