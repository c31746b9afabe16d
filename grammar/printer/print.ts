import { blockLines, entryNames, joined, type Parts } from "./align";
import type { Block, Item, Leaf, Row } from "./rows";
import { indentation, valueLines, widest, withoutLastCommas } from "./values";
import { isCode, type Wording } from "./words";

interface Line {
  readonly text: string;
  readonly comment?: string | undefined;
}

/** Prints rows: what was on one line stays on one line where it fits, what was parted stays parted. */
export class Printer {
  constructor(private readonly wording: Wording) {}

  lines(rows: readonly Row[], indent = ""): string[] {
    const split = rows.flatMap((row) => this.split(row, indent)).map((row) => this.opened(row, indent));
    const names = entryNames(split, (leaf) => this.name(leaf));
    const blocks = blockLines(split, (block) => this.parts(block), widest - indent.length);
    const out: string[] = [];
    let run: Line[] = [];
    const flush = (): void => {
      out.push(...beside(run));
      run = [];
    };
    split.forEach((row, i) => {
      if (row.blank && i > 0) {
        flush();
        out.push("");
      }
      const lines = this.row(row, indent, names.get(row), blocks.get(row));
      const last = lines[lines.length - 1];
      const single = lines.length === 1 && row.typed === undefined && row.items.length > 0;
      if (single && row.comment !== undefined) return void run.push({ text: last, comment: row.comment });
      flush();
      if (row.comment !== undefined && row.items.length > 0 && row.typed === undefined) lines[lines.length - 1] = `${last}  ${row.comment}`;
      out.push(...lines);
    });
    flush();
    return out;
  }

  /** An item on one line, or nothing where it takes several. */
  private flat(item: Item): string | undefined {
    if (item.type === "leaf") return item.pieces.some(({ kind }) => kind === "comment") ? undefined : this.wording.flat(withoutLastCommas(item.pieces).filter(isCode));
    const parts = this.parts(item);
    return parts && joined([parts.name, parts.from, parts.body]);
  }

  private parts(block: Block): Parts | undefined {
    const body = this.body(block);
    if (body === undefined) return undefined;
    const at = block.head.findIndex(({ kind, text }, i) => i > 0 && kind === "keyword" && text === "from");
    const cut = at < 0 ? block.head.length : at;
    return { name: this.wording.flat(block.head.slice(0, cut)), from: this.wording.flat(block.head.slice(cut)), body };
  }

  /** A block's braces and what is between them, if that goes on one line; empty where there are none. */
  private body({ rows, comments, oneLine }: Block): string | undefined {
    if (!rows) return comments.length > 0 ? undefined : "";
    if (comments.length > 0 || rows.some((row) => row.comment !== undefined || row.typed !== undefined)) return undefined;
    if (rows.length === 0) return "{ }";
    if (!oneLine) return undefined;
    const items = rows.flatMap((row) => row.items.map((item) => this.flat(item)));
    return items.includes(undefined) ? undefined : `{ ${items.join(" ; ")} }`;
  }

  /** Several items that don't go on one line are given a row each; a comment beside them goes above. */
  private split(row: Row, indent: string): readonly Row[] {
    if (row.items.length < 2) return [row];
    const flat = row.items.map((item) => this.flat(item));
    if (!flat.includes(undefined) && indent.length + flat.join(" ; ").length <= widest) return [row];
    const { comment, blank } = row;
    const own = comment !== undefined && !flat.includes(undefined);
    const items = row.items.map((item, i): Row => ({
      blank: blank && i === 0 && !own, items: [item], ...(comment !== undefined && !own && i === row.items.length - 1 ? { comment } : {}),
    }));
    return own ? [{ blank, items: [], comment }, ...items] : items;
  }

  /** A block that was on one line and is too long for it: the comment beside it goes beside its brace. */
  private opened(row: Row, indent: string): Row {
    const [item] = row.items;
    if (row.comment === undefined || row.items.length !== 1 || item.type !== "block" || !item.oneLine || !item.rows) return row;
    if (indent.length + (this.flat(item) ?? "").length <= widest) return row;
    return { blank: row.blank, items: [{ ...item, comments: [row.comment] }] };
  }

  private row({ items, comment, typed }: Row, indent: string, name: number | undefined, line: string | undefined): string[] {
    if (typed !== undefined) return [typed];
    const [item] = items;
    if (!item) return [indent + (comment ?? "")];
    if (items.length > 1) return [indent + items.map((each) => this.flat(each)).join(" ; ")];
    if (item.type === "leaf") return this.leaf(item, indent, name ?? 0);
    return line === undefined ? this.block(item, indent) : [indent + line];
  }

  private name(leaf: Leaf): string {
    return this.wording.flat(leaf.pieces.slice(0, leaf.split).filter(isCode).slice(0, -1));
  }

  private leaf(leaf: Leaf, indent: string, width: number): string[] {
    const value = leaf.pieces.slice(leaf.split);
    // A comment between the name and its value keeps the entry as it is broken.
    const early = leaf.pieces.slice(0, leaf.split).some(({ kind }) => kind === "comment");
    const before = leaf.split === 0 || early ? "" : `${this.name(leaf).padEnd(width)} = `;
    const [first, ...rest] = valueLines(early ? leaf.pieces : value, this.wording, indent, indent.length + before.length);
    return [indent + before + first, ...rest];
  }

  private block(block: Block, indent: string): string[] {
    const head = this.wording.flat(block.head);
    const [beside, ...more] = block.comments;
    const open = `${indent}${head}${block.rows ? " {" : ""}${beside === undefined ? "" : `  ${beside}`}`;
    const inner = indent + indentation;
    if (!block.rows) return [open, ...more.map((comment) => inner + comment)];
    const rows = block.oneLine ? block.rows.flatMap((row) => row.items.map((item): Row => ({ blank: false, items: [item] }))) : block.rows;
    return [open, ...more.map((comment) => inner + comment), ...this.lines(rows, inner), `${indent}}`];
  }
}

/** Comments on lines that follow one another stand under one another, unless that would put one far from its line. */
function beside(lines: readonly Line[]): string[] {
  const widths = lines.map(({ text }) => text.length);
  const most = Math.max(...widths);
  const width = most - Math.min(...widths) <= 40 ? most : 0;
  return lines.map(({ text, comment }) => `${text.padEnd(width)}  ${comment}`);
}
