import type { Piece } from "../tree";
import { isCode, type Wording } from "./words";

export const widest = 140;
export const indentation = "  ";

const opens = ({ text, kind }: Piece): boolean => kind === "symbol" && (text === "(" || text === "[");
const closes = ({ text, kind }: Piece): boolean => kind === "symbol" && (text === ")" || text === "]");
const isComma = ({ text, kind }: Piece): boolean => kind === "symbol" && text === ",";

/** Without the comma a list may end in. */
export function withoutLastCommas(pieces: readonly Piece[]): Piece[] {
  const code = pieces.filter(isCode);
  return pieces.filter((piece) => {
    if (!isComma(piece)) return true;
    const next = code[code.indexOf(piece) + 1];
    return !(next && closes(next) && next.text === "]");
  });
}

interface Bracket {
  readonly open: number;
  readonly close: number;
}

/** The longest of the brackets that stand in no other. */
function outermost(pieces: readonly Piece[], wording: Wording): Bracket | undefined {
  let depth = 0;
  let open = 0;
  let longest = 2;
  let best: Bracket | undefined;
  pieces.forEach((piece, i) => {
    if (opens(piece) && depth++ === 0) open = i;
    if (!closes(piece) || --depth > 0) return;
    const { length } = wording.flat(pieces.slice(open, i + 1));
    if (length > longest) [longest, best] = [length, { open, close: i }];
  });
  return best;
}

function byComma(pieces: readonly Piece[]): Piece[][] {
  const items: Piece[][] = [[]];
  let depth = 0;
  for (const piece of pieces) {
    if (opens(piece)) depth++;
    if (closes(piece)) depth--;
    if (depth === 0 && isComma(piece)) items.push([]);
    else items[items.length - 1].push(piece);
  }
  return items;
}

/** Keeps the line breaks of the text, which comments may need: each line indented by the brackets it stands in. */
function asBroken(pieces: readonly Piece[], wording: Wording, indent: string): string[] {
  const lines: string[] = [];
  let line: Piece[] = [];
  let depth = 0;
  let breaks = 0;
  let before: Piece | undefined;
  const flush = (): void => {
    const code = line.filter(isCode);
    if (line.length === 0) return;
    let outer = 0;
    while (outer < code.length && closes(code[outer])) outer++;
    const inside = lines.length === 0 ? "" : indent + indentation.repeat(Math.max(depth - outer, depth > 0 ? 0 : 1));
    const comments = line.filter(({ kind }) => kind === "comment").map(({ text }) => text.trimEnd());
    if (breaks > 1 && lines.length > 0) lines.push("");
    lines.push(inside + [wording.flat(code, before), ...comments].filter(Boolean).join("  "));
    for (const piece of code) depth += opens(piece) ? 1 : closes(piece) ? -1 : 0;
    before = code[code.length - 1] ?? before;
    line = [];
    breaks = 0;
  };
  for (const piece of pieces) {
    if (piece.kind === "newline") {
      flush();
      breaks++;
    } else if (piece.kind !== "space") line.push(piece);
  }
  flush();
  return lines;
}

/** Too long for a line: one item a line inside its longest bracket, those too long again likewise. */
function broken(pieces: readonly Piece[], wording: Wording, indent: string, column: number, after: number): string[] | undefined {
  const flat = wording.flat(pieces);
  if (column + flat.length + after <= widest) return [flat];
  const bracket = outermost(pieces, wording);
  if (!bracket) return [flat];
  const inner = indent + indentation;
  const items = byComma(pieces.slice(bracket.open + 1, bracket.close));
  const lines = items.flatMap((item, i) => {
    const last = i === items.length - 1;
    const [first, ...rest] = broken(item, wording, inner, inner.length, last ? 0 : 1) ?? [];
    const written = [inner + first, ...rest];
    if (!last) written[written.length - 1] += ",";
    return written;
  });
  // Written whole and cut, so that the spaces around the bracket are as on one line.
  const head = wording.flat(pieces.slice(0, bracket.open + 1));
  const whole = wording.flat(pieces.slice(0, bracket.close + 1));
  const tail = flat.slice(whole.length - 1);
  return [head, ...lines, indent + tail];
}

/** The lines of a value that begins at `column` in an entry indented by `indent`; the first without indentation. */
export function valueLines(pieces: readonly Piece[], wording: Wording, indent: string, column: number): readonly string[] {
  if (pieces.some(({ kind }) => kind === "comment")) return asBroken(pieces, wording, indent);
  const code = withoutLastCommas(pieces).filter(isCode);
  const flat = wording.flat(code);
  if (column + flat.length <= widest) return [flat];
  const lines = broken(code, wording, indent, column, 0) ?? [flat];
  return lines.length === 1 && pieces.some(({ kind }) => kind === "newline") ? asBroken(pieces, wording, indent) : lines;
}
