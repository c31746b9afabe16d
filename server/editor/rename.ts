import type { Position, Range } from "vscode-languageserver";
import { keywords } from "../../grammar/vocabulary";
import { NamePattern } from "./names/pattern";
import { canonical } from "./names/canonical";
import type { Meaning } from "./names/meaning";
import { keepsMeaning } from "./rename-trial";
import { around, mentions, nameAt, type Mention } from "./references";
import { rangeIn, type View } from "./view";

/** Why something can't be renamed, in words for the user. */
export class RenameRefusal extends Error {}

/** The name at a position as it can be renamed; undefined where there is none. */
export function renameable(view: View, position: Position): { readonly range: Range; readonly placeholder: string } | undefined {
  const name = nameAt(view, position);
  if (!name) return undefined;
  const { meaning } = name.occurrence;
  if (meaning.type === "block" && !canonical(meaning.block).named) {
    throw new RenameRefusal(`this ${meaning.block.kind} has no name of its own; write one after its kind first`);
  }
  const { start, end } = name.occurrence;
  return { range: rangeIn(view, { start, end }), placeholder: view.parsed.text.slice(start, end) };
}

/** All mentions that a new name must be written over. Refuses names that can't be, or are taken. */
export function renamed(view: View, position: Position, to: string, others: Iterable<string> = []): readonly Mention[] {
  const name = nameAt(view, position);
  if (!name || !renameable(view, position)) throw new RenameRefusal("there is no name here that can be changed");
  if (!NamePattern.test(to)) throw new RenameRefusal(`"${to}" is no name: a letter, then letters, digits and _`);
  if ((keywords as readonly string[]).includes(to)) throw new RenameRefusal(`"${to}" is a word of the language`);
  const all = mentions(view.service, around(view, others), name.key);
  const first = declared(name.occurrence.meaning, all);
  if (first !== to && taken(name.occurrence.meaning, to)) throw new RenameRefusal(`there is a "${to}" already`);
  if (!keepsMeaning(view.service, all, to)) throw new RenameRefusal(`"${to}" would be taken for something else of that name`);
  return all;
}

function declared(meaning: Meaning, all: readonly Mention[]): string | undefined {
  if (meaning.type === "block") return meaning.block.key;
  const at = all.find((mention) => mention.declares);
  return at && at.file.parsed.text.slice(at.span.start, at.span.end);
}

function taken(meaning: Meaning, to: string): boolean {
  if (meaning.type === "block") {
    const { parent, file } = canonical(meaning.block);
    return parent?.children.has(to) === true || (parent?.parent === undefined && (file.lets.has(to) || file.uses.has(to)));
  }
  if (meaning.type !== "let" && meaning.type !== "alias") return false;
  const { lets, uses, root } = meaning.file;
  return lets.has(to) || uses.has(to) || root.children.has(to);
}
