import type { Piece } from "../../../grammar/tree";
import { findProperty, kinds } from "../../../grammar/vocabulary";
import { openScope, type Cursor, type Scope } from "./scope";

const solid = (piece: Piece): boolean => piece.kind !== "space" && piece.kind !== "newline" && piece.kind !== "comment";
const wordy = (piece: Piece | undefined): boolean => piece?.kind === "name" || piece?.kind === "keyword";

/** After these a value goes on over the end of its line. */
const goesOn = new Set(["+", "-", "−", "*", "/", "±", "+-", ",", "to", ".."]);

/** Where an offset is, told from the pieces alone. Undefined in a comment, in a string and at a number. */
export function cursorAt(pieces: readonly Piece[], offset: number): Cursor | undefined {
  const touching = pieces.find((piece) => piece.start < offset && offset <= piece.end);
  if (touching?.kind === "comment" || touching?.kind === "number") return undefined;
  if (touching?.kind === "string" && (offset < touching.end || !/^"(?:[^"\\]|\\.)*"$/.test(touching.text))) return undefined;
  const typed = wordy(touching) ? touching : undefined;
  const from = typed?.start ?? offset;
  const scanner = new Scanner();
  for (const piece of pieces) {
    if (!scanner.cursor && piece.end > from) scanner.stop(offset, typed, pieces);
    scanner.take(piece);
  }
  if (!scanner.cursor) scanner.stop(offset, typed, pieces);
  return scanner.cursor;
}

class Scanner {
  cursor?: Cursor;
  private scope: Scope = openScope("file", -1, -1);
  private entry: Piece[] = [];
  private brackets: Piece[] = [];
  private line = 0;
  private lineStart = 0;
  private firstOfLine?: Piece;

  /** Keeps what is known at the cursor; scanning goes on, so that the scope learns what stands after it. */
  stop(offset: number, typed: Piece | undefined, pieces: readonly Piece[]): void {
    const word = typed ? { start: typed.start, end: typed.end, text: typed.text.slice(0, offset - typed.start) } : { start: offset, end: offset, text: "" };
    if (this.firstOfLine === undefined && this.entryEnds()) this.end();
    if (typed && this.firstOfLine === undefined) this.leaveScopes(typed);
    const rest = pieces.slice(pieces.findIndex((piece) => piece.start >= word.end && piece.kind !== "space"));
    this.cursor = {
      offset, word, scope: this.scope, before: [...this.entry], brackets: [...this.brackets],
      next: rest[0] && rest[0].start >= word.end && solid(rest[0]) ? rest[0] : undefined,
    };
  }

  take(piece: Piece): void {
    if (piece.kind === "newline") {
      this.line++;
      this.lineStart = piece.end;
      if (this.entryEnds() && this.brackets.length === 0) this.end();
      this.firstOfLine = undefined;
      return;
    }
    if (!solid(piece)) return;
    if (this.firstOfLine === undefined) this.leaveScopes(piece);
    this.firstOfLine ??= piece;
    const text = piece.kind === "symbol" ? piece.text : "";
    if (text === ";") return this.end();
    if (text === "{") return this.open();
    if (text === "}") return this.close();
    if (text === "=") this.assign();
    this.entry.push(piece);
    if (text === "(" || text === "[") this.brackets.push(piece);
    if (text === ")" || text === "]") this.brackets.pop();
  }

  /** Is what stands in the entry so far whole at the end of a line? */
  private entryEnds(): boolean {
    const last = this.entry.at(-1);
    return last !== undefined && !goesOn.has(last.text) && !(this.brackets.length > 0 && (last.text === "(" || last.text === "["));
  }

  private end(): void {
    this.entry = [];
    this.brackets = [];
  }

  /** An entry begun inside open brackets shows that those were never closed. */
  private restart(): void {
    if (this.brackets.length === 0) return;
    const from = this.firstOfLine ? this.entry.findIndex((piece) => piece.start >= this.firstOfLine!.start) : -1;
    this.entry = from < 0 ? [] : this.entry.slice(from);
    this.brackets = [];
  }

  private assign(): void {
    this.restart();
    const name = this.entry.map((piece) => piece.text).join("");
    if (this.entry.length > 0 && !this.scope.properties.has(name)) this.scope.properties.set(name, this.entry[0].start);
  }

  private open(): void {
    this.restart();
    const [kind, second] = this.entry;
    const from = this.entry.findIndex((piece) => piece.kind === "keyword" && piece.text === "from");
    const name = second?.kind === "name" ? second.text : undefined;
    const path = from < 0 ? undefined : this.entry.slice(from + 1).map((piece) => piece.text).join("");
    if (kind) this.scope.children.push({ kind: kind.text, name: name ?? kind.text });
    const indent = (this.firstOfLine?.start ?? this.lineStart) - this.lineStart;
    this.scope = openScope(kind?.text ?? "", indent, this.line, this.scope, name, path);
    this.end();
  }

  private close(): void {
    this.scope = this.scope.parent ?? this.scope;
    this.end();
  }

  /** What begins a line no further in than the block's own, and can't stand in it, shows that its `}` is missing. */
  private leaveScopes(piece: Piece): void {
    if (!wordy(piece) || this.brackets.length > 0) return;
    const column = piece.start - this.lineStart;
    while (this.scope.parent && column <= this.scope.indent && this.line > this.scope.line && !fits(this.scope.kind, piece.text)) {
      this.scope = this.scope.parent;
      this.end();
    }
  }
}

function fits(parent: string, word: string): boolean {
  if (["use", "let", "require"].includes(word)) return false;
  const kind = kinds[word];
  return !kind || kind.within.includes(parent) || findProperty(parent, word) !== undefined;
}
