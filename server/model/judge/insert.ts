import type { BlockNode } from "../../../grammar/tree";
import type { Fix } from "../../../shared/finding";
import type { SourceFile } from "../resolve/instance";

const indentAt = (text: string, offset: number): string => /[ \t]*/.exec(text.slice(text.lastIndexOf("\n", offset - 1) + 1))![0];

/** An edit that writes entries or blocks into a block, before what it holds or after: each on a line, or parted by `;` in a block of one line. */
export function insertInto(node: BlockNode, file: SourceFile, pieces: readonly string[], where: "first" | "last", title: string): Fix[] | undefined {
  const { body } = node;
  if (!body?.close) return undefined;
  const { text } = file.parsed;
  const [start, end] = where === "first"
    ? [body.open.end, body.items[0]?.start ?? body.close.start]
    : [body.items.at(-1)?.end ?? body.open.end, body.close.start];
  const edit = (written: string): Fix[] => [{ title, edits: [{ file: file.uri, start, end: start, text: written }] }];
  if (text.slice(start, end).includes("\n")) {
    const indent = body.items[0] ? indentAt(text, body.items[0].start) : `${indentAt(text, node.start)}  `;
    return edit(pieces.map((piece) => `\n${indent}${piece}`).join(""));
  }
  const beside = body.items.length > 0;
  const joined = pieces.join(" ; ");
  return edit(where === "first" ? ` ${joined}${beside ? " ;" : ""}` : `${beside ? " ;" : ""} ${joined}`);
}
