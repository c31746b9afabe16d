export interface Row {
  /** As an editor counts. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Lines in cells; comments from `#` or `//` on and empty lines are left out. Cells are parted by `;`, tabs, commas or blanks. */
export function rowsOf(text: string): readonly Row[] {
  const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/).map((line, i) => ({ line: i + 1, text: line.replace(/(#|\/\/).*$/, "").trimEnd() }));
  const written = lines.filter(({ text }) => text.trim() !== "");
  if (written.length === 0) return [];
  const parted = separatorOf(written[0].text);
  return written.map(({ line, text }) => ({ line, cells: parted(text).map((cell) => cell.trim().replace(/^"(.*)"$/, "$1").trim()) }));
}

/** By the header, which holds no decimal commas. */
function separatorOf(header: string): (line: string) => readonly string[] {
  for (const separator of [";", "\t", ","]) if (header.includes(separator)) return (line) => line.split(separator);
  return (line) => joinedUnits(line.trim()).split(/\s+/);
}

/** `alpha [deg]` is one name, though blanks part the names. */
const joinedUnits = (line: string): string => line.replace(/\s+([[(][^\])]*[\])])/g, "$1");

/** The number of a cell, with a decimal point or a comma. */
export function numberOf(cell: string): number | undefined {
  const plain = cell.replace(",", ".").replace("−", "-");
  const number = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain) ? Number(plain) : NaN;
  return Number.isFinite(number) ? number : undefined;
}
