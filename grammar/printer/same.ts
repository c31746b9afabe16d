import type { ParsedFile } from "../tree";

/** Where a node stands and how its unit was spelt say nothing of what it means. */
const aside: ReadonlySet<string> = new Set(["start", "end", "at", "equals", "open", "close"]);

function sameNode(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b;
  const spelt = "type" in a && a.type === "unit" ? "text" : "";
  const keys = Object.keys(a).filter((key) => !aside.has(key) && key !== spelt);
  return Object.keys(b).filter((key) => !aside.has(key) && key !== spelt).length === keys.length &&
    keys.every((key) => sameNode((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}

export const commentsOf = ({ pieces }: ParsedFile): string[] =>
  pieces.filter((piece) => piece.kind === "comment").map((piece) => piece.text.trimEnd());

/** Do two texts mean the same: one tree, one list of issues, the same comments in the same order? */
export function sameMeaning(a: ParsedFile, b: ParsedFile): boolean {
  const comments = commentsOf(b);
  return a.issues.length === b.issues.length && a.issues.every((issue, i) => issue.message === b.issues[i].message) &&
    commentsOf(a).every((comment, i) => comment === comments[i]) && commentsOf(a).length === comments.length && sameNode(a.tree, b.tree);
}
