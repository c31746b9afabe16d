import { lineAt, lineEnd, lineStarts } from "../positions";
import type { BlockNode, BodyNode, EntryNode, LetNode, ParsedFile, Piece, RequireNode, Span, UseNode, WaiveNode } from "../tree";
import { isCode } from "./words";

type Node = EntryNode | BlockNode | WaiveNode | UseNode | LetNode | RequireNode;

/** Something that holds no others. `split` is where its value begins; before it stand its name and `=`. */
export interface Leaf {
  readonly type: "leaf";
  readonly kind: "entry" | "let" | "other";
  readonly pieces: readonly Piece[];
  readonly split: number;
}

export interface Block {
  readonly type: "block";
  readonly kind: string;
  readonly head: readonly Piece[];
  /** Comments on the line of the brace, and any between the head and its brace. */
  readonly comments: readonly string[];
  /** None for a block without a body. */
  readonly rows?: readonly Row[];
  readonly oneLine: boolean;
  /** Lines of its beginning, its brace and its end. */
  readonly edges: { readonly first: number; readonly open: number; readonly close: number };
}

export type Item = Leaf | Block;

/** What stands on one line, or began on it: items, a comment, or lines that are left as they were typed. */
export interface Row {
  /** An empty line stands before it. */
  readonly blank: boolean;
  readonly items: readonly Item[];
  readonly comment?: string;
  readonly typed?: string;
}

interface Building {
  blank: boolean;
  items: Item[];
  comment?: string;
  typed?: string;
  first: number;
  last: number;
}

/** Reads a parsed text into rows. Lines with an issue, and blocks whose braces are in doubt, are kept as typed. */
export class Rows {
  private readonly starts: readonly number[];
  private readonly pieces: readonly Piece[];
  private readonly bad = new Set<number>();

  constructor(private readonly parsed: ParsedFile) {
    this.starts = lineStarts(parsed.text);
    this.pieces = parsed.pieces;
    for (const { start, end } of parsed.issues) this.mark(start, end);
    this.markUnread();
    for (const item of parsed.tree.items) if (!this.closed(item)) this.mark(item.start, item.end);
  }

  read(): Row[] {
    // A statement met inside a block hangs in the file's tree; its line has an issue and is kept with the block's.
    let end = 0;
    const items = [...this.parsed.tree.items].sort((a, b) => a.start - b.start).filter((item) => {
      if (item.start < end) return false;
      end = item.end;
      return true;
    });
    return this.rowsOf(items, 0, this.parsed.text.length);
  }

  private line(offset: number): number {
    return lineAt(this.starts, offset);
  }

  private mark(start: number, end: number): void {
    for (let line = this.line(start); line <= this.line(end); line++) this.bad.add(line);
  }

  /** Has every block in it its own two braces? */
  private closed(node: Node): boolean {
    if (node.type !== "block" || !node.body) return true;
    return node.body.close !== undefined && node.body.open.end > node.body.open.start && node.body.items.every((item) => this.closed(item));
  }

  /** Code that no node holds: what the parser stepped over. */
  private markUnread(): void {
    const read: Span[] = [];
    const visit = (node: Node): void => {
      if (node.type !== "block") return void read.push(node);
      read.push({ start: node.start, end: node.body?.open.end ?? node.end });
      node.body?.items.forEach(visit);
      if (node.body?.close) read.push(node.body.close);
    };
    this.parsed.tree.items.forEach(visit);
    read.sort((a, b) => a.start - b.start);
    let i = 0;
    let unread: number | undefined;
    for (const piece of this.pieces) {
      if (!isCode(piece) || piece.text === ";") continue;
      while (i < read.length && read[i].end <= piece.start) i++;
      if (i < read.length && piece.start >= read[i].start) unread = undefined;
      else {
        unread ??= piece.start;
        this.mark(unread, piece.end);
      }
    }
  }

  private between(start: number, end: number): Piece[] {
    return this.pieces.slice(this.pieceAt(start), this.pieceAt(end));
  }

  /** The first piece at or after an offset. */
  private pieceAt(offset: number): number {
    let low = 0;
    let high = this.pieces.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.pieces[middle].start < offset) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private rowsOf(nodes: readonly Node[], start: number, end: number): Row[] {
    const sorted = [...nodes].sort((a, b) => a.start - b.start);
    const rows: Building[] = [];
    let next = 0;
    let breaks = 2;
    let at = this.pieceAt(start);
    const stop = this.pieceAt(end);
    const row = (first: number, last: number): Building => {
      const current = rows[rows.length - 1];
      if (current && breaks === 0 && current.last >= first) {
        current.last = Math.max(current.last, last);
        return current;
      }
      const made = { blank: breaks > 1, items: [], first, last };
      rows.push(made);
      return made;
    };
    while (at < stop) {
      const piece = this.pieces[at];
      const line = this.line(piece.start);
      if (piece.kind === "newline") breaks++;
      else if (piece.kind === "comment") {
        // `/* */` may reach over lines; it is never right, so its lines are kept as typed.
        const made = row(line, this.line(piece.end));
        made.comment = made.comment === undefined ? piece.text.trimEnd() : `${made.comment} ${piece.text.trimEnd()}`;
        breaks = 0;
      } else if (isCode(piece)) {
        const node = sorted[next];
        if (node && node.start === piece.start) {
          next++;
          row(line, this.line(node.end)).items.push(this.item(node));
          at = this.pieceAt(node.end);
          breaks = 0;
          continue;
        }
        if (piece.text !== ";") row(line, line);
        if (piece.text !== ";") breaks = 0;
      }
      at++;
    }
    return this.asTyped(rows);
  }

  /** Rows with a line in doubt become those lines. A row that begins beside a brace is never: its block is kept whole. */
  private asTyped(rows: readonly Building[]): Row[] {
    const out: Building[] = [];
    for (const row of rows) {
      if (!this.doubtful(row)) {
        out.push(row);
        continue;
      }
      const before = out[out.length - 1];
      if (before?.typed !== undefined && before.last >= row.first) {
        before.last = Math.max(before.last, row.last);
        before.typed = this.typed(before.first, before.last);
      } else out.push({ ...row, items: [], typed: this.typed(row.first, row.last) });
    }
    return out;
  }

  private typed(first: number, last: number): string {
    return this.parsed.text.slice(this.starts[first], lineEnd(this.parsed.text, this.starts, last));
  }

  private doubtful({ items, first, last }: Building): boolean {
    if (items.length === 0) return this.anyBad(first, last);
    return this.bad.has(first) || this.bad.has(last) || items.some((item) => this.doubtfulItem(item, first, last));
  }

  private anyBad(first: number, last: number): boolean {
    for (let line = first; line <= last; line++) if (this.bad.has(line)) return true;
    return false;
  }

  /** Issues inside a block of several lines are its own rows' matter. */
  private doubtfulItem(item: Item, first: number, last: number): boolean {
    if (item.type === "leaf" || item.oneLine) return this.anyBad(first, last);
    return this.anyBad(item.edges.first, item.edges.open) || this.bad.has(item.edges.close);
  }

  private item(node: Node): Item {
    if (node.type === "block") return this.block(node);
    const value = node.type === "entry" || node.type === "let" ? node.value : undefined;
    const pieces = this.between(node.start, node.end);
    const split = value ? pieces.findIndex((piece) => piece.start >= value.start && isCode(piece)) : 0;
    return { type: "leaf", kind: split <= 0 ? "other" : node.type === "let" ? "let" : "entry", pieces, split: Math.max(0, split) };
  }

  private block(node: BlockNode): Block {
    const { body } = node;
    const head = this.between(node.start, body?.open.start ?? node.end);
    const comments = head.filter((piece) => piece.kind === "comment").map((piece) => piece.text.trimEnd());
    const edges = { first: this.line(node.start), open: this.line(body?.open.start ?? node.end), close: this.line(node.end) };
    const block = {
      type: "block", kind: node.kind.text, head: head.filter(isCode), comments, oneLine: edges.first === edges.close, edges,
    } as const;
    return body ? { ...block, ...this.inside(body, comments) } : block;
  }

  private inside(body: BodyNode, comments: readonly string[]): { rows: readonly Row[]; comments: readonly string[] } {
    const rows = this.rowsOf(body.items, body.open.end, body.close?.start ?? body.end);
    const [first, ...rest] = rows;
    // A comment right after the brace speaks of the block.
    const beside = first && first.items.length === 0 && first.typed === undefined && first.comment !== undefined &&
      this.line(body.open.start) === this.line(this.commentStart(body));
    return beside && first.comment !== undefined ? { rows: rest, comments: [...comments, first.comment] } : { rows, comments };
  }

  private commentStart(body: BodyNode): number {
    for (let i = this.pieceAt(body.open.end); i < this.pieces.length; i++) if (this.pieces[i].kind === "comment") return this.pieces[i].start;
    return this.parsed.text.length;
  }
}
