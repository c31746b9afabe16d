import { nearest } from "../../../grammar/nearest";
import type { BlockNode, EntryNode } from "../../../grammar/tree";
import { clashingProperties, findProperty, kinds, kindsWithin, missingProperties, reserved, reservedText, usualKind, usualProperty } from "../../../grammar/vocabulary";
import type { Kind, Property } from "../../../grammar/vocabulary/schema";
import type { Fix } from "../../../shared/finding";
import { rewrite, type Problems } from "../problems";
import { isInside, pathOf, type Instance } from "../resolve/instance";

/** Is the word known, may it stand here, and has it all it needs? */
export function judgeBlock(block: Instance, problems: Problems): void {
  const node = block.node!;
  const kind = Object.hasOwn(kinds, block.kind) ? kinds[block.kind] : undefined;
  if (!kind) return unknownKind(block, node, problems);
  judgePlace(block, node, kind, problems);
  for (const item of node.body?.items ?? []) if (item.type === "entry") judgeEntry(block, item, kind, problems);
  judgeGroups(block, node, kind, problems);
  if (!isInside(block, "loading") || block.kind === "loading") judgeNeeded(block, node, kind, problems);
}

const above = (block: Instance): string => (block.parent?.parent ? block.parent.kind : "file");

/** A loading may change any part; where an assembly is placed, its own parts may be changed. */
function mayStand(block: Instance, kind: Kind): boolean {
  return isInside(block.parent!, "loading") || kind.within.includes(above(block));
}

function unknownKind(block: Instance, node: BlockNode, problems: Problems): void {
  if (reserved.has(block.kind)) {
    problems.add("unknown_word", "error", block.file, node.kind, `"${block.kind}" ${reservedText}: it can't be used yet`);
    return;
  }
  const here = kindsWithin(above(block)).map((k) => k.name);
  const near = usualKind(block.kind, above(block)) ?? nearest(block.kind, here) ?? nearest(block.kind, Object.keys(kinds));
  const message = `there is no word "${block.kind}"${near ? `; did you mean ${near}?` : ""}`;
  problems.add("unknown_word", "error", block.file, node.kind, message, near ? [rewrite(block.file, node.kind, `Write ${near}`, near)] : undefined);
}

function judgePlace(block: Instance, node: BlockNode, kind: Kind, problems: Problems): void {
  if (!block.parent || mayStand(block, kind)) return;
  // A word that isn't known has had its message; what stands in it may be right.
  if (above(block) !== "file" && !Object.hasOwn(kinds, block.parent.kind)) return;
  const places = kind.within.map((w) => (w === "file" ? "at the top of the file" : `in ${/^[aeiou]/.test(w) ? "an" : "a"} ${w}`));
  const here = above(block) === "file" ? "at the top" : `in a ${above(block)}`;
  problems.add("misplaced", "error", block.file, node.kind, `${block.kind} can't stand ${here}; it stands ${orList(places)}`);
}

const orList = (words: readonly string[]) =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
const andList = (words: readonly string[]) =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

function judgeEntry(block: Instance, entry: EntryNode, kind: Kind, problems: Problems): void {
  if (!entry.equals || kind.open) return;
  const name = entry.path.names.map((n) => n.text).join(".");
  if (findProperty(kind.name, name)) return;
  const near = usualProperty(kind.name, name) ?? nearest(name, Object.keys(kind.properties));
  const message = `${block.kind} has no property "${name}"${near ? `; did you mean ${near}?` : ""}`;
  problems.add("unknown_word", "error", block.file, entry.path, message, near ? [rewrite(block.file, entry.path, `Write ${near}`, near)] : undefined);
}

/** Of some properties only one may be written: they say the same thing in other ways. */
function judgeGroups(block: Instance, node: BlockNode, kind: Kind, problems: Problems): void {
  const entries = entriesOf(node);
  for (const clash of clashingProperties(kind, new Set(entries.keys()))) {
    const [first, second] = [...entries.keys()].filter((name) => clash.includes(name));
    problems.add("wrong_value", "error", block.file, entries.get(second)!.path, `${second} and ${first} say the same thing; keep one of them`);
  }
}

/** What is written in the block by name; a word that stands without a value counts, for it has had its message. */
function entriesOf(node: BlockNode): Map<string, EntryNode> {
  const entries = (node.body?.items ?? []).filter((item): item is EntryNode => item.type === "entry");
  return new Map(entries.map((entry) => [entry.path.names[0].text, entry]));
}

function judgeNeeded(block: Instance, node: BlockNode, kind: Kind, problems: Problems): void {
  const kindsInside = [...block.children.values()].map((child) => child.kind);
  const there = new Set([...entriesOf(node).keys(), ...block.slots.keys(), ...kindsInside]);
  const missing = missingProperties(kind, there, block.origin !== undefined || !isFirst(block));
  if (missing.length === 0) return;
  const name = node.name ? `${block.kind} ${block.key}` : block.kind;
  const message = `${name} needs ${andList(missing.map((p) => p.name))}`;
  problems.add("missing_property", "error", block.file, node.name ?? node.kind, message, fill(block, node, missing));
}

function isFirst(block: Instance): boolean {
  const siblings = [...(block.parent?.children.values() ?? [])].filter((other) => other.kind === block.kind);
  return siblings[0] === block;
}

/** Writes what is missing with the vocabulary's examples, before all else in the block. */
function fill(block: Instance, node: BlockNode, missing: readonly Property[]): Fix[] | undefined {
  if (!node.body?.close) return undefined;
  const at = node.body.open.end;
  const text = missing.map((p) => ` ${p.name} = ${p.example} ;`).join("");
  return [{ title: `Add ${andList(missing.map((p) => p.name))} to ${pathOf(block)}`, edits: [{ file: block.file.uri, start: at, end: at, text }] }];
}
