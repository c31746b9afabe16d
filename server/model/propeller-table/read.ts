import type { MeasuredLoad } from "../design/power";
import { numberOf, rowsOf } from "../polar-table/rows";
import { columnsOf, type Column } from "./columns";

/** kg/m³, where the table names none: the standard atmosphere at sea level. */
const standardDensity = 1.225;

/**
 * Reads a table of measured thrust and power: a header that names its columns with their units, then a row a point, in any
 * order. Otherwise what is wrong with it, to follow the file's name.
 */
export function readPropellerTable(text: string): { readonly points: readonly MeasuredLoad[] } | { readonly fault: string } {
  const [header, ...rows] = rowsOf(text);
  if (!header) return { fault: "holds nothing; a table has a header and a row for each point" };
  const columns = columnsOf(header.cells);
  if ("fault" in columns) return columns;
  const points: MeasuredLoad[] = [];
  for (const { line, cells } of rows) {
    if (cells.length > header.cells.length) return { fault: `has more cells than names of columns on its line ${line}; with decimal commas, part the columns by ;` };
    let bad: Column | undefined;
    const value = (column: Column) => {
      const number = numberOf(cells[column.place] ?? "");
      if (number === undefined) bad ??= column;
      return (number ?? Number.NaN) * column.scale;
    };
    const point: MeasuredLoad = {
      rotation: value(columns.rpm), speed: value(columns.speed), thrust: value(columns.thrust), power: value(columns.power),
      density: columns.density ? value(columns.density) : standardDensity,
    };
    if (bad) return { fault: `has no number for "${bad.name}" on its line ${line}` };
    const wrong = wrongIn(point);
    if (wrong) return { fault: `${wrong} on its line ${line}` };
    const twice = points.findIndex((one) => one.rotation === point.rotation && one.speed === point.speed);
    if (twice >= 0) return { fault: `says twice what it does at one rpm and speed: on its lines ${rows[twice].line} and ${line}` };
    points.push(point);
  }
  return points.length === 0 ? { fault: "has a header and no points" } : { points };
}

function wrongIn({ rotation, speed, power, thrust, density }: MeasuredLoad): string | undefined {
  if (!(rotation > 0)) return "has an rpm that is not above 0";
  if (speed < 0) return "has a speed below 0";
  if (!(density > 0.1 && density < 10)) return "has an air density that is no air's";
  if (thrust > 0 && !(power > 0)) return "has thrust without power";
  return undefined;
}
