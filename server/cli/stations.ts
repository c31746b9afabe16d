import type { BladeStation } from "../model/design/power";
import { Failure } from "./io";

/**
 * Blade stations from lines of r/R, c/R and the angle to the disc in degrees, from hub to tip, with commas, semicolons or
 * tabs between. Lines that begin with `#`, empty ones and a header are passed over. A failure names the first bad line.
 */
export function readStations(text: string, file: string): BladeStation[] {
  const stations: BladeStation[] = [];
  let header = false;
  text.split(/\r\n|\n|\r/).forEach((line, i) => {
    if (/^\s*(#|$)/.test(line)) return;
    const cells = line.split(/[,;\t]/).map((cell) => cell.trim());
    if (stations.length === 0 && !header && cells.every((cell) => Number.isNaN(numberOf(cell)))) {
      header = true;
      return;
    }
    const wrong = wrongIn(cells, stations[stations.length - 1]);
    if (wrong) throw new Failure(`${file}:${i + 1}: ${wrong}`);
    const [radius, chord, degrees] = cells.map(numberOf);
    stations.push({ radius, chord, angle: (degrees * Math.PI) / 180 });
  });
  if (stations.length < 2) throw new Failure(`${file} has ${stations.length === 0 ? "no station" : "one station"}; a blade needs two or more`);
  return stations;
}

const numberOf = (cell: string): number => (cell === "" ? Number.NaN : Number(cell));

function wrongIn(cells: readonly string[], before: BladeStation | undefined): string | undefined {
  if (cells.length !== 3) return `a station is three numbers, r/R, c/R and the angle in degrees; here are ${cells.length}`;
  const odd = cells.find((cell) => !Number.isFinite(numberOf(cell)));
  if (odd !== undefined) return `${odd === "" ? "a number is missing" : `"${odd}" is no number`}; a station is r/R, c/R and the angle in degrees`;
  const [radius, chord, degrees] = cells.map(numberOf);
  // Nearer the axis no blade carries.
  if (!(radius > 0.02 && radius <= 1)) return `r/R must be more than 0.02 and at most 1; here it is ${radius}`;
  if (before && radius <= before.radius) return `r/R must grow from line to line; ${radius} comes after ${before.radius}`;
  if (!(chord >= 0 && chord <= 2)) return `c/R must lie between 0 and 2; here it is ${chord}`;
  if (!(Math.abs(degrees) <= 90)) return `the angle must lie between -90 and 90 degrees; here it is ${degrees}`;
  return undefined;
}
