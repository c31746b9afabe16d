import type { Position, Range } from "vscode-languageserver-textdocument";
import type { EntryNode, Piece } from "../../../grammar/tree";
import { checks } from "../../checks/registry";
import type { SourceFile } from "../../model/resolve/instance";
import { figureCard } from "../../report/account";
import type { Card } from "../../report/card";
import { occurrencesAt } from "../names/occurrences";
import type { Meaning, Occurrence } from "../names/meaning";
import { nodesAt } from "../nodes";
import { offsetIn, rangeIn, type View } from "../view";
import { blockCard } from "./blocks";
import { numberCard } from "./numbers";
import { readText, valueText } from "./value-text";
import { functionCard, keywordCard, kindCard, propertyCard } from "./words";

export interface Told {
  readonly card: Card;
  readonly range: Range;
}

/** What is to be said of the word or number at a position. */
export function hover(view: View, position: Position): Told | undefined {
  const offset = offsetIn(view, position);
  const piece = pieceAt(view.parsed.pieces, offset);
  if (!piece || piece.kind === "comment") return undefined;
  const chain = nodesAt(view.parsed.tree, offset);
  const flag = chain.some((node) => node.type === "flag") ? chain.find((node): node is EntryNode => node.type === "entry") : undefined;
  const named = byName(view, flag ? flag.path.start : offset);
  if (named) return flag ? { ...named, range: rangeIn(view, piece) } : named;
  const card = piece.kind === "keyword" ? keywordCard(piece.text) : piece.kind === "name" ? kindCard(piece.text) : undefined;
  if (card) return { card, range: rangeIn(view, piece) };
  const number = chain.find((node) => node.type === "quantity");
  const told = number && numberCard(view, chain);
  return told && { card: told, range: rangeIn(view, number) };
}

/** The piece the offset is in; the one that ends there if a word or number does. */
function pieceAt(pieces: readonly Piece[], offset: number): Piece | undefined {
  const solid = (piece: Piece) => piece.kind !== "space" && piece.kind !== "newline";
  return pieces.find((piece) => piece.start <= offset && offset < piece.end && solid(piece))
    ?? pieces.find((piece) => piece.end === offset && solid(piece));
}

function byName(view: View, offset: number): Told | undefined {
  const here = occurrencesAt(view.analysis.model, offset);
  // The name of a figure is told as a whole, even over the part in it.
  const found = here.find((one) => one.meaning.type === "figure") ?? here[0];
  const card = found && cardOf(view, found);
  return card && { card, range: rangeIn(view, found) };
}

function cardOf(view: View, { meaning }: Occurrence): Card | undefined {
  switch (meaning.type) {
    case "kind":
      return kindCard(meaning.kind);
    case "property":
      return propertyCard(meaning.property, meaning.block.kind, here(view, meaning));
    case "block":
      return blockCard(view, meaning.block);
    case "side":
      return { title: `${meaning.side} ${meaning.block.key}`, parts: [meaning.side === "right" ? "As written." : "The image of what is written."] };
    case "let":
      return letCard(view, meaning.file, meaning.name);
    case "alias":
    case "file":
      return fileCard(meaning);
    case "derived":
      return derivedCard(view, meaning);
    case "word":
      return propertyCard(meaning.property, meaning.block.kind, meaning.word);
    case "function":
      return functionCard(meaning.name);
    case "figure":
      return figureCard(meaning.name, view.analysis, meaning.loading ? view.analysis.set(meaning.loading) : view.set);
    case "check":
      return checkCard(meaning.code);
  }
}

type Of<T extends Meaning["type"]> = Extract<Meaning, { type: T }>;

/** The property's value in the loading shown; nothing where it is broken. */
function here(view: View, { property, block }: Of<"property">): string | undefined {
  return readText(view.set.loading.reader.raw(block, property.name), view.analysis.say, property.form);
}

/** A `let` with its value. */
export function letCard(view: View, file: SourceFile, name: string): Card {
  const value = view.set.loading.reader.world.letValue(file, name);
  return { title: `let \`${name}\``, parts: [value ? `= ${valueText(value, view.analysis.say)}` : "Its value can't be worked out."] };
}

function fileCard(meaning: Of<"alias"> | Of<"file">): Card {
  const used = meaning.type === "file" ? meaning.file : meaning.used;
  if (!used) return { title: "A file", parts: ["It can't be read."] };
  const title = [...used.root.children.values()].find((block) => block.kind === "airframe")?.node?.title?.text;
  const names = [...used.root.children.values()].filter((block) => block.named).map((block) => `\`${block.key}\``);
  return { title: decodeURIComponent(used.uri.split("/").at(-1) ?? used.uri), parts: [...(title ? [title] : []), ...(names.length > 0 ? [names.join(", ")] : [])] };
}

function derivedCard(view: View, { block, name }: Of<"derived">): Card {
  const value = view.set.loading.reader.world.derived(block, name);
  const text = readText(value, view.analysis.say, Array.isArray(value) ? { form: "point" } : undefined);
  return { title: `${name.replace(/_/g, " ")} of \`${block.key}\``, parts: [text ? `= ${text}` : "It can't be worked out."] };
}

/** A check by its code, or by the name of one of its thresholds. */
export function checkCard(code: string): Card | undefined {
  const check = checks.find((each) => each.code === code.split(".")[0]);
  if (!check) return undefined;
  const rows = check.thresholds.map((t) => [t.name || "threshold", `${t.text} (${t.source})`] as const);
  return { title: `check \`${check.code}\``, parts: [check.text, ...(rows.length > 0 ? [{ rows }] : [])] };
}
