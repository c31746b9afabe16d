import { plainSymbol } from "../parser/unit-words";
import type { FileNode, ParsedFile, Piece } from "../tree";

/** Pieces that stand inside a unit, after its first: they are written without a space before. */
export function unitPieces({ tree, pieces }: ParsedFile): { readonly first: ReadonlySet<number>; readonly later: ReadonlySet<number> } {
  const units: { start: number; end: number }[] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    if ("type" in node && node.type === "unit") units.push(node as unknown as { start: number; end: number });
    else for (const child of Object.values(node)) walk(child);
  };
  walk(tree satisfies FileNode);
  units.sort((a, b) => a.start - b.start);
  const first = new Set<number>();
  const later = new Set<number>();
  let i = 0;
  for (const { start } of pieces) {
    while (i < units.length && units[i].end <= start) i++;
    if (i >= units.length || start < units[i].start) continue;
    (start === units[i].start ? first : later).add(start);
  }
  return { first, later };
}

export const isCode = ({ kind }: Piece): boolean => kind !== "space" && kind !== "newline" && kind !== "comment";

const superscripts: Readonly<Record<string, string>> = { "²": "^2", "³": "^3", "−": "-", "+-": "±", "+−": "±" };
const endsOperand = ({ kind, text }: Piece): boolean =>
  kind === "name" || kind === "number" || kind === "string" || /^[)\]%²³]$|^(?:yes|no)$/.test(text);
const isMinus = ({ text }: Piece): boolean => text === "-" || text === "−";

/** Writes rows of pieces with the spaces a person puts between them, and signs of print as the language has them. */
export class Wording {
  private readonly units: ReturnType<typeof unitPieces>;

  constructor(parsed: ParsedFile) {
    this.units = unitPieces(parsed);
  }

  private plain({ kind, text, start }: Piece): string {
    if (kind === "symbol") return superscripts[text] ?? text;
    return kind === "name" && (this.units.first.has(start) || this.units.later.has(start)) ? plainSymbol(text) : text;
  }

  /** `before` is the piece in front of `left`, which tells whether a minus is a sign or an operator. */
  private spaced(before: Piece | undefined, left: Piece, right: Piece): boolean {
    if (this.units.later.has(right.start)) return false;
    if (/^[([.^]$/.test(left.text) || /^[)\],.^²³]$/.test(right.text)) return false;
    if (right.text === "(" && left.kind === "name") return false;
    return !(isMinus(left) && !(before && endsOperand(before)));
  }

  /** On one line. Only pieces of code; `before` is the one in front of them. */
  flat(pieces: readonly Piece[], before?: Piece): string {
    let out = "";
    pieces.forEach((piece, i) => {
      if (i > 0 && this.spaced(i > 1 ? pieces[i - 2] : before, pieces[i - 1], piece)) out += " ";
      out += this.plain(piece);
    });
    return out;
  }
}
