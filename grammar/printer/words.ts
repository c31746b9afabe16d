import { plainSymbol } from "../parser/unit-words";
import type { BinaryNode, ParsedFile, Piece, UnitNode, ValueNode } from "../tree";

interface Units {
  /** Offsets of the pieces units begin with, and of those that go on with them: these have no space before. */
  readonly first: ReadonlySet<number>;
  readonly later: ReadonlySet<number>;
  /** Offsets of `/` between two quantities with units, `60 deg/0.12 s`, which people write close. */
  readonly close: ReadonlySet<number>;
}

function unitsOf({ tree, pieces }: ParsedFile): Units {
  const units: UnitNode[] = [];
  const close = new Set<number>();
  const measured = (node: ValueNode): boolean => node.type === "quantity" && node.unit !== undefined;
  const walk = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    const typed = node as UnitNode | BinaryNode | { readonly type?: undefined };
    if (typed.type === "unit") return void units.push(typed);
    if (typed.type === "binary" && typed.operator === "/" && measured(typed.left) && measured(typed.right)) close.add(typed.at.start);
    for (const child of Object.values(node)) walk(child);
  };
  walk(tree);
  units.sort((a, b) => a.start - b.start);
  const first = new Set<number>();
  const later = new Set<number>();
  let i = 0;
  for (const { start } of pieces) {
    while (i < units.length && units[i].end <= start) i++;
    if (i >= units.length || start < units[i].start) continue;
    (start === units[i].start ? first : later).add(start);
  }
  return { first, later, close };
}

export const isCode = ({ kind }: Piece): boolean => kind !== "space" && kind !== "newline" && kind !== "comment";

const superscripts: Readonly<Record<string, string>> = { "²": "^2", "³": "^3", "−": "-", "+-": "±", "+−": "±" };
const endsOperand = ({ kind, text }: Piece): boolean =>
  kind === "name" || kind === "number" || kind === "string" || /^[)\]%²³]$|^(?:yes|no)$/.test(text);
const isMinus = ({ text }: Piece): boolean => text === "-" || text === "−";

/** Writes rows of pieces with the spaces a person puts between them, and signs of print as the language has them. */
export class Wording {
  private readonly units: Units;

  constructor(parsed: ParsedFile) {
    this.units = unitsOf(parsed);
  }

  private plain({ kind, text, start }: Piece): string {
    if (kind === "symbol") return superscripts[text] ?? text;
    return kind === "name" && (this.units.first.has(start) || this.units.later.has(start)) ? plainSymbol(text) : text;
  }

  /** `before` is the piece in front of `left`, which tells whether a minus is a sign or an operator. */
  private spaced(before: Piece | undefined, left: Piece, right: Piece): boolean {
    if (this.units.later.has(right.start) || this.units.close.has(left.start) || this.units.close.has(right.start)) return false;
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
