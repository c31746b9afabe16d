/** Two functions of two places, solved at whole places when they are first needed. */
export interface SplineTable {
  /** Both at a place: `across` from 0 to `columns`, `up` from 0 to `rows`. Beyond, those of the end. */
  readonly at: (across: number, up: number) => readonly [number, number];
}

/** Joined by cubic splines through four points each way, so that slopes are steady (E. Catmull and R. Rom, 1974). */
export function splineTable(columns: number, rows: number, solve: (column: number, row: number) => readonly [number, number]): SplineTable {
  const known = new Float64Array(2 * (columns + 1) * (rows + 1)).fill(Number.NaN);
  const point = (column: number, row: number): number => {
    const at = 2 * (column * (rows + 1) + row);
    if (Number.isNaN(known[at])) [known[at], known[at + 1]] = solve(column, row);
    return at;
  };
  return {
    at: (across, up) => {
      const [column, right] = cell(across, columns);
      const [row, above] = cell(up, rows);
      let [first, second] = [0, 0];
      for (let i = -1; i <= 2; i++) {
        const columnShare = weight(i, right, column, columns);
        if (columnShare === 0) continue;
        for (let j = -1; j <= 2; j++) {
          const share = columnShare * weight(j, above, row, rows);
          if (share === 0) continue;
          const at = point(column + i, row + j);
          first += share * known[at];
          second += share * known[at + 1];
        }
      }
      return [first, second];
    },
  };
}

/** The interval a place lies in, and how far along it. */
function cell(place: number, last: number): [number, number] {
  const inside = Math.min(last, Math.max(0, place));
  const low = Math.min(last - 1, Math.floor(inside));
  return [low, inside - low];
}

/** Of the point `i` from the interval's first, −1 to 2; at the ends of the table the slope is that of the three points there. */
function weight(i: number, t: number, low: number, last: number): number {
  const start = low === 0 ? endSlope[i + 1] : middleSlope[i + 1];
  const finish = low === last - 1 ? -endSlope[2 - i] : middleSlope[i] ?? 0;
  const value = i === 0 ? (1 + 2 * t) * (1 - t) ** 2 : i === 1 ? t ** 2 * (3 - 2 * t) : 0;
  return value + t * (1 - t) ** 2 * start - t ** 2 * (1 - t) * finish;
}

/** Of the four points −1 to 2, at 0; at 1 they are those one on, or mirrored. */
const middleSlope = [-0.5, 0, 0.5, 0];
const endSlope = [0, -1.5, 2, -0.5];
