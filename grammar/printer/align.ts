import type { Block, Leaf, Row } from "./rows";

const isPlain = ({ items, comment, typed }: Row): boolean => typed === undefined && (items.length > 0 || comment === undefined);

/** Rows that follow one another and hold one item alike, comments and lines in doubt between them passed over. */
function runs(rows: readonly Row[], alike: (row: Row) => string | undefined): Row[][] {
  const found: Row[][] = [];
  let kind: string | undefined;
  for (const row of rows) {
    if (row.blank) kind = undefined;
    if (!isPlain(row)) continue;
    const own = row.items.length === 1 ? alike(row) : undefined;
    if (own !== undefined && own === kind) found[found.length - 1].push(row);
    else if (own !== undefined) found.push([row]);
    kind = own;
  }
  return found;
}

/** How wide the names of entries and lets are written, so that their `=` line up. */
export function entryNames(rows: readonly Row[], name: (leaf: Leaf) => string): ReadonlyMap<Row, number> {
  const widths = new Map<Row, number>();
  const leaf = ({ items: [item] }: Row): Leaf | undefined => (item.type === "leaf" && item.kind !== "other" ? item : undefined);
  for (const run of runs(rows, (row) => leaf(row)?.kind)) {
    const width = Math.max(...run.map((row) => name(leaf(row)!).length));
    for (const row of run) widths.set(row, width);
  }
  return widths;
}

/** A one-line block in its parts: `servo ail`, `from single.ail`, `{ weight = 9 g }`. The last two may be empty. */
export interface Parts {
  readonly name: string;
  readonly from: string;
  readonly body: string;
}

export const joined = (parts: readonly string[]): string => parts.filter(Boolean).join(" ");

/** The lines of one-line blocks of a kind that follow one another, their `from` and `{` lined up where all still fit. */
export function blockLines(rows: readonly Row[], parts: (block: Block) => Parts | undefined, widest: number): ReadonlyMap<Row, string> {
  const lines = new Map<Row, string>();
  const partsOf = ({ items: [item] }: Row): Parts | undefined => (item.type === "block" ? parts(item) : undefined);
  const alike = (row: Row): string | undefined => {
    const own = partsOf(row);
    const fits = own && joined([own.name, own.from, own.body]).length <= widest;
    return fits ? `${(row.items[0] as Block).kind} ${own.from !== ""} ${own.body !== ""}` : undefined;
  };
  for (const run of runs(rows, alike)) {
    const all = run.map((row) => partsOf(row)!);
    const name = Math.max(...all.map((own) => own.name.length));
    const from = Math.max(...all.map((own) => own.from.length));
    const padded = all.map((own) => joined([own.name.padEnd(name), own.from.padEnd(from), own.body]).trimEnd());
    const fit = padded.every((line) => line.length <= widest);
    run.forEach((row, i) => lines.set(row, fit ? padded[i] : joined([all[i].name, all[i].from, all[i].body])));
  }
  return lines;
}
