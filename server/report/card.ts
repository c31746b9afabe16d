/** A short text for people: prose (with `code` in backticks), rows of name and value, and lines of the language. */
export interface Card {
  readonly title: string;
  readonly parts: readonly Part[];
}

export type Row = readonly [name: string, value: string];
export type Part = string | { readonly rows: readonly Row[] } | { readonly code: string };

/** Only what Markdown would take for its own: readers of plain terminals see the backslashes. */
const escaped = (text: string): string => text
  .replace(/[\\*[|~]|<(?=[A-Za-z/!])/g, "\\$&")
  .replace(/(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, "\\_")
  .replace(/^(?:[-+#>]|\d+(?=[.)] ))/gm, "\\$&");

/** Prose as Markdown; what stands in backticks is left as it is. */
const prose = (text: string): string =>
  text.split("`").map((piece, i) => (i % 2 === 0 ? escaped(piece) : `\`${piece}\``)).join("");

const cell = (text: string): string => escaped(text).replace(/`/g, "\\`").replace(/\s*\n\s*/g, " ");

export function markdown(card: Card): string {
  const parts = card.parts.map((part) => {
    if (typeof part === "string") return prose(part);
    if ("code" in part) return `\`\`\`airframe\n${part.code}\n\`\`\``;
    if (part.rows.length === 0) return "";
    return ["| | |", "|---|---|", ...part.rows.map(([name, value]) => `| ${cell(name)} | ${cell(value)} |`)].join("\n");
  });
  return [`**${prose(card.title)}**`, ...parts].filter(Boolean).join("\n\n");
}

export function plain(card: Card): string {
  const parts = card.parts.map((part) => {
    if (typeof part === "string") return part;
    if ("code" in part) return indented(part.code);
    return aligned(part.rows).map((line) => `  ${line}`).join("\n");
  });
  return [card.title, ...parts].filter(Boolean).join("\n\n");
}

const indented = (text: string): string => text.split("\n").map((line) => `  ${line}`).join("\n");

/** Rows as lines with their values below one another. */
export function aligned(rows: readonly Row[]): string[] {
  const width = Math.max(0, ...rows.map(([name]) => [...name].length));
  return rows.map(([name, value]) => `${name}${" ".repeat(width - [...name].length)}  ${value}`.trimEnd());
}
