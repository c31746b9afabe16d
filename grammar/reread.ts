import type { FileNode, ParsedFile, SyntaxIssue, StatementNode } from "./tree";

/** A stretch of statements of the old text, and how much longer it is in the new. */
export interface Reread {
  /** The first statement in it, −1 where the text before all of them is in it too; and the first after it. */
  readonly from: number;
  readonly to: number;
  readonly longer: number;
}

/**
 * Which statements an edit touches. Undefined where the old text has anything wrong: then what one statement says may hang
 * on another, as a brace that is missing does.
 */
export function changeBetween({ text: old, tree: { items }, issues }: ParsedFile, text: string): Reread | undefined {
  if (issues.length > 0 || items.length === 0) return undefined;
  const most = Math.min(old.length, text.length);
  let start = 0;
  while (start < most && old.charCodeAt(start) === text.charCodeAt(start)) start++;
  let same = 0;
  while (same < most - start && old.charCodeAt(old.length - 1 - same) === text.charCodeAt(text.length - 1 - same)) same++;
  const end = old.length - same;
  // A statement's own first character must stand, and the line before the next one must end after the change.
  const after = items.findIndex((item) => item.start >= start);
  const from = (after < 0 ? items.length : after) - 1;
  const next = items.findIndex((item) => item.start > end);
  const to = next < 0 ? items.length : next;
  if (from >= 0 && !ownLine(old, items[from].start)) return undefined;
  if (to < items.length && !/\n[ \t]*$/.test(old.slice(end, items[to].start))) return undefined;
  return { from, to, longer: text.length - old.length };
}

/** Does nothing but space stand before it on its line? */
const ownLine = (text: string, at: number): boolean => text.slice(text.lastIndexOf("\n", at - 1) + 1, at).trim() === "";

/**
 * The tree of a text of which only some statements are new: these are read alone, the others' nodes are kept or moved.
 * Undefined where something is wrong with the new ones.
 */
export function reread(
  { text: old, tree: { items } }: ParsedFile, text: string, { from, to, longer }: Reread,
  read: (part: string) => { readonly tree: FileNode; readonly issues: readonly SyntaxIssue[] },
): FileNode | undefined {
  const start = from < 0 ? 0 : items[from].start;
  const end = (to < items.length ? items[to].start : old.length) + longer;
  const { tree, issues } = read(text.slice(start, end));
  if (issues.length > 0) return undefined;
  const middle = tree.items.map((item) => moved(item, start));
  const after = items.slice(to);
  return {
    type: "file", start: 0, end: text.length,
    items: [...items.slice(0, Math.max(0, from)), ...middle, ...(longer === 0 ? after : after.map((item) => moved(item, longer)))],
  };
}

/** A copy of a node and all below it, `by` further on in the text. */
function moved(node: StatementNode, by: number): StatementNode {
  return by === 0 ? node : (copy(node, by) as StatementNode);
}

function copy(value: unknown, by: number): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map((one) => copy(one, by));
  const out: Record<string, unknown> = {};
  for (const key in value) {
    const one = (value as Record<string, unknown>)[key];
    out[key] = key === "start" || key === "end" ? (one as number) + by : typeof one === "object" ? copy(one, by) : one;
  }
  return out;
}
