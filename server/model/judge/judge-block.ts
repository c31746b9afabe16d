import { nearest } from "../../../grammar/nearest";
import type { BlockNode, EntryNode } from "../../../grammar/tree";
import {
  clashingProperties, findProperty, kinds, kindsWithin, reserved, reservedText, usualKind, usualProperty,
} from "../../../grammar/vocabulary";
import type { Kind } from "../../../grammar/vocabulary/schema";
import { rewrite, type Problems } from "../problems";
import { isInside, type Instance } from "../resolve/instance";
import { orList, withArticle } from "../words";
import { already, single } from "../single";
import { entriesOf } from "./entries";
import { judgeNeeded } from "./judge-needed";

/** Is the word known, may it stand here, and has it all it needs? */
export function judgeBlock(block: Instance, problems: Problems): void {
  const node = block.node!;
  const kind = Object.hasOwn(kinds, block.kind) ? kinds[block.kind] : undefined;
  if (!kind) return unknownKind(block, node, problems);
  judgePlace(block, node, kind, problems);
  const meant = new Set<string>();
  for (const item of node.body?.items ?? []) {
    if (item.type === "entry") judgeEntry(block, item, kind, meant, problems);
    if (item.type === "block" && !Object.hasOwn(kinds, item.kind.text)) meant.add(kindMeant(item.kind.text, block.kind) ?? "");
  }
  judgeGroups(block, node, kind, problems);
  const changes = isInside(block, "loading") && block.kind !== "loading";
  if (!changes) judgeNeeded(block, node, kind, meant, problems);
}

/** Says it where a second one stands beside the first of its kind. */
export function judgeSingles(parent: Instance, problems: Problems): void {
  const first = new Map<string, Instance>();
  for (const block of parent.children.values()) {
    if (!single.has(block.kind) || !block.node || block.file !== parent.file) continue;
    const before = first.get(block.kind);
    if (!before) first.set(block.kind, block);
    else problems.add("name_twice", "error", block.file, block.node.kind, already(block.kind, before.named ? before.key : ""));
  }
}

const above = (block: Instance): string => (block.parent?.parent ? block.parent.kind : "file");

const kindMeant = (word: string, parent: string): string | undefined =>
  usualKind(word, parent) ?? nearest(word, kindsWithin(parent).map((k) => k.name)) ?? nearest(word, Object.keys(kinds));

function unknownKind(block: Instance, node: BlockNode, problems: Problems): void {
  if (reserved.has(block.kind)) {
    problems.add("unknown_word", "error", block.file, node.kind, `"${block.kind}" ${reservedText}: it can't be used yet`);
    return;
  }
  const near = kindMeant(block.kind, above(block));
  const here = kindsWithin(above(block)).map((k) => k.name);
  const hint = near ? `did you mean ${near}?` : here.length > 0 && here.length < 12 ? `here may stand ${orList(here)}` : "the reference lists them all";
  problems.add("unknown_word", "error", block.file, node.kind, `there is no word "${block.kind}"; ${hint}`,
    near ? [rewrite(block.file, node.kind, `Write ${near}`, near)] : undefined);
}

/** A loading may change any part; where an assembly is placed, its own parts may be changed. */
function judgePlace(block: Instance, node: BlockNode, kind: Kind, problems: Problems): void {
  const place = above(block);
  if (!block.parent || isInside(block.parent, "loading") || kind.within.includes(place)) return;
  // A word that isn't known has had its message; what stands in it may be right.
  if (place !== "file" && !Object.hasOwn(kinds, place)) return;
  const places = kind.within.map((w) => (w === "file" ? "at the top of the file" : `in ${withArticle(w)}`));
  const here = place === "file" ? "at the top of the file" : `in ${withArticle(place)}`;
  problems.add("misplaced", "error", block.file, node.kind, `${block.kind} can't stand ${here}; it stands ${orList(places)}`);
}

/** `meant` takes the property that a mistyped one stands for, so that it is not missed as well. */
function judgeEntry(block: Instance, entry: EntryNode, kind: Kind, meant: Set<string>, problems: Problems): void {
  if (!entry.equals || kind.open) return;
  const name = entry.path.names.map((n) => n.text).join(".");
  if (findProperty(kind.name, name)) {
    if (name === "drop" && !block.copied && !block.node?.from) {
      problems.add("misplaced", "error", block.file, entry.path, `drop leaves out children of a copied block, and ${block.key} is not copied from any`);
    }
    return;
  }
  const known = Object.keys(kind.properties);
  const near = usualProperty(kind.name, name) ?? nearest(name, known);
  if (near) meant.add(near);
  const hint = near ? `; did you mean ${near}?` : known.length > 0 && known.length < 12 ? `; it has ${known.join(", ")}` : "";
  problems.add("unknown_word", "error", block.file, entry.path, `${block.kind} has no property "${name}"${hint}`,
    near ? [rewrite(block.file, entry.path, `Write ${near}`, near)] : undefined);
}

/** Of some properties only one may be written: they say the same thing in other ways. */
function judgeGroups(block: Instance, node: BlockNode, kind: Kind, problems: Problems): void {
  if (kind.exclusive.length === 0) return;
  const entries = entriesOf(node);
  for (const clash of clashingProperties(kind, new Set(entries.keys()))) {
    const [first, second] = [...entries.keys()].filter((name) => clash.includes(name));
    problems.add("wrong_value", "error", block.file, entries.get(second)!.path, `${second} and ${first} say the same thing in two ways; keep one of them`);
  }
}
