import type { MeasuredPolar, MeasuredPoint, MeasuredRun } from "../design/geometry";
import { columnsOf, type Columns } from "./columns";
import { numberOf, rowsOf, type Row } from "./rows";
import { faultOfRun } from "./run-faults";

/** Rows in turn whose Reynolds numbers lie this close to that of the first are one run: they waver as a tunnel is run. */
const close = 0.05;

/** A plate across the wind has a drag of 2. */
const most = 3;

interface Line extends MeasuredPoint {
  readonly line: number;
  readonly reynolds: number;
}

/**
 * Reads a table of measured polars: a header that names its columns, then a row a point, by Reynolds number and angle.
 * Otherwise what is wrong with it, to follow the file's name.
 */
export function readPolarTable(text: string): { readonly polar: MeasuredPolar } | { readonly fault: string } {
  const [header, ...rows] = rowsOf(text);
  if (!header) return { fault: "holds nothing; a table has a header and a row for each point" };
  const columns = columnsOf(header.cells);
  if ("fault" in columns) return columns;
  const lines: Line[] = [];
  for (const row of rows) {
    const line = lineOf(row, columns, header.cells);
    if (typeof line === "string") return { fault: line };
    lines.push(line);
  }
  const runs: MeasuredRun[] = [];
  for (const group of runsOf(lines)) {
    const rising = group[0].angle > group[group.length - 1].angle ? [...group].reverse() : group;
    const fault = faultOfRun(rising);
    if (fault) return { fault };
    const reynolds = rising.reduce((sum, line) => sum + line.reynolds, 0) / rising.length;
    runs.push({ reynolds, points: rising.map(({ angle, lift, drag, moment }) => ({ angle, lift, drag, ...(moment === undefined ? {} : { moment }) })) });
  }
  if (runs.length === 0) return { fault: "has a header and no points" };
  runs.sort((a, b) => a.reynolds - b.reynolds);
  const twice = runs.find(({ reynolds }, i) => i > 0 && reynolds < runs[i - 1].reynolds * (1 + close));
  if (twice) return { fault: `comes back to a Reynolds number of ${Math.round(twice.reynolds)}; its rows must stand together, by rising angle` };
  return { polar: { runs } };
}

/** A row's numbers, or what is wrong with it. */
function lineOf({ line, cells }: Row, columns: Columns, header: readonly string[]): Line | string {
  const wanted = [columns.reynolds, columns.angle, columns.lift, columns.drag];
  if (cells.length > header.length) return `has more cells than names of columns on its line ${line}; with decimal commas, part the columns by ;`;
  const numbers = wanted.map((column) => numberOf(cells[column] ?? ""));
  const bad = numbers.findIndex((number) => number === undefined);
  if (bad >= 0) return `has no number for "${header[wanted[bad]]}" on its line ${line}`;
  const [reynolds, angle, lift, drag] = numbers as readonly number[];
  if (reynolds < 1000) return `has a Reynolds number of ${reynolds} on its line ${line}; write it out, as 200000`;
  if (!(drag > 0 && drag < most)) return `has a drag of ${drag} on its line ${line}; a drag coefficient is above 0 and below ${most}`;
  const written = columns.moment === undefined ? "" : (cells[columns.moment] ?? "");
  const moment = written === "" ? undefined : numberOf(written);
  if (written !== "" && moment === undefined) return `has no number for "${header[columns.moment!]}" on its line ${line}`;
  return { line, reynolds, angle: angle * columns.radians, lift, drag, ...(moment === undefined ? {} : { moment }) };
}

function runsOf(lines: readonly Line[]): readonly (readonly Line[])[] {
  const runs: Line[][] = [];
  for (const line of lines) {
    const run = runs.at(-1);
    if (run && Math.abs(line.reynolds / run[0].reynolds - 1) < close) run.push(line);
    else runs.push([line]);
  }
  return runs;
}
