import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver";
import type { BlockNode, Piece, Span } from "../../grammar/tree";
import { positionOf } from "../lines";
import type { View } from "./view";

/** Blocks, runs of comment lines and runs of `use`. */
export function foldingRanges(view: View): FoldingRange[] {
  const { parsed } = view;
  const line = (offset: number): number => positionOf(parsed, offset).line;
  const range = (span: Span, kind?: FoldingRangeKind): FoldingRange[] => {
    const [startLine, endLine] = [line(span.start), line(span.end)];
    return endLine > startLine ? [{ startLine, endLine, ...(kind ? { kind } : {}) }] : [];
  };
  const blocks = (node: BlockNode): FoldingRange[] => {
    const { body } = node;
    if (!body) return [];
    const inner = body.items.flatMap((item) => (item.type === "block" ? blocks(item) : []));
    // The closing brace stays in sight.
    const last = body.close ? line(body.close.start) - 1 : line(body.end);
    const startLine = line(body.open.start);
    return [...(last > startLine ? [{ startLine, endLine: last }] : []), ...inner];
  };
  return [
    ...parsed.tree.items.flatMap((item) => (item.type === "block" ? blocks(item) : [])),
    ...runs(parsed.pieces).flatMap((run) => range(run, FoldingRangeKind.Comment)),
    ...uses(view).flatMap((run) => range(run, FoldingRangeKind.Imports)),
  ].sort((a, b) => a.startLine - b.startLine);
}

/** Comments that stand alone on their lines, one under the other. */
function runs(pieces: readonly Piece[]): Span[] {
  const out: { start: number; end: number }[] = [];
  let lineIsEmpty = true;
  let newlines = 2;
  for (const piece of pieces) {
    if (piece.kind === "newline") {
      newlines++;
      lineIsEmpty = true;
    } else if (piece.kind === "comment" && lineIsEmpty) {
      const last = out.at(-1);
      if (last && newlines === 1) last.end = piece.end;
      else out.push({ start: piece.start, end: piece.end });
      newlines = 0;
    } else if (piece.kind !== "space") {
      newlines = 2;
      lineIsEmpty = false;
    }
  }
  return out;
}

function uses({ parsed }: View): Span[] {
  const out: { start: number; end: number }[] = [];
  let running = false;
  for (const item of parsed.tree.items) {
    if (item.type === "use" && running) out[out.length - 1].end = item.end;
    else if (item.type === "use") out.push({ start: item.start, end: item.end });
    running = item.type === "use";
  }
  return out;
}
