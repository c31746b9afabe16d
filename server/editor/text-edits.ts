import type { Piece, TextEdit } from "../../grammar/tree";

/** Small edits that make `to` of `from`: one for each gap or piece that differs, so that cursors and marks stay put. */
export function editsBetween(from: readonly Piece[], to: readonly Piece[]): TextEdit[] {
  const [a, b] = [parts(from), parts(to)];
  return a.length === b.length ? pairwise(a, b) : around(textOf(from), textOf(to));
}

interface Part {
  readonly start: number;
  readonly text: string;
}

const textOf = (pieces: readonly Piece[]): string => pieces.map((piece) => piece.text).join("");

const isSpace = ({ kind }: Piece): boolean => kind === "space" || kind === "newline";

/** Gap, piece, gap, piece … gap: what stands between is one part even where there is nothing. */
function parts(pieces: readonly Piece[]): Part[] {
  const out: Part[] = [];
  let gap: Part = { start: 0, text: "" };
  for (const piece of pieces) {
    if (isSpace(piece)) gap = { start: gap.start, text: gap.text + piece.text };
    else {
      out.push(gap, piece);
      gap = { start: piece.end, text: "" };
    }
  }
  return [...out, gap];
}

function pairwise(a: readonly Part[], b: readonly Part[]): TextEdit[] {
  return a.flatMap((part, i) => (part.text === b[i].text ? [] : [{ start: part.start, end: part.start + part.text.length, text: b[i].text }]));
}

/** What differs between the beginning and the end that both have. */
function around(from: string, to: string): TextEdit[] {
  if (from === to) return [];
  let start = 0;
  while (start < from.length && from[start] === to[start]) start++;
  let tail = 0;
  while (tail < Math.min(from.length, to.length) - start && from[from.length - 1 - tail] === to[to.length - 1 - tail]) tail++;
  return [{ start, end: from.length - tail, text: to.slice(start, to.length - tail) }];
}
