import { readBlocks, type Points } from "./columns";
import { inOneRun } from "./layout";

const least = 10;

/** A trailing edge open by more than this share of the chord is a side that is missing. */
const open = 0.05;

/** A step back in x by more than this share of the chord is not the roughness of a nose. */
const back = 0.002;

/**
 * Reads a section's coordinates: x, y in chords, from the trailing edge over the upper side to the nose and back below,
 * whatever the file's layout and scale. Otherwise what is wrong with it, to follow the file's name.
 */
export function readCoordinates(text: string): { readonly points: Points } | { readonly fault: string } {
  const read = readBlocks(text);
  if ("fault" in read) return read;
  const count = read.blocks.flat().length;
  if (count < least) return { fault: `has ${count} points; a section needs at least ${least}` };
  const run = inOneRun(read.blocks);
  if (!run) return { fault: "does not run around a section: it needs two columns x and y, an upper and a lower side" };
  const points = scaled(distinct(run));
  const fault = faultOf(points);
  return fault ? { fault } : { points };
}

const distinct = (points: Points): Points => points.filter(([x, y], i) => i === 0 || x !== points[i - 1][0] || y !== points[i - 1][1]);

/** In chords: files in per cent or in lengths are brought to a nose at x = 0 and a trailing edge at x = 1. */
function scaled(points: Points): Points {
  const xs = points.map(([x]) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  if (low > -0.05 && low < 0.05 && high > 0.95 && high < 1.05) return points;
  return points.map(([x, y]) => [(x - low) / (high - low), y / (high - low)]);
}

function faultOf(points: Points): string | undefined {
  const xs = points.map(([x]) => x);
  const nose = xs.indexOf(Math.min(...xs));
  const [first, last] = [points[0], points[points.length - 1]];
  const gap = Math.hypot(first[0] - last[0], first[1] - last[1]);
  if (nose === 0 || nose === xs.length - 1) return "has one side only; a section needs an upper and a lower side";
  if (Math.abs(first[0] - last[0]) > open || gap > 2 * open) {
    return `is open: its sides end ${(gap * 100).toFixed(0)} % of the chord apart at the trailing edge`;
  }
  const place = xs.findIndex((x, i) => (i > 0 && i <= nose ? x - xs[i - 1] : i > nose ? xs[i - 1] - x : 0) > back);
  if (place >= 0) {
    return `has points out of order near x = ${xs[place].toFixed(3)}: it must run along each side without turning back`;
  }
  return crossing(points, nose);
}

/** The sides must not cross; at the very ends they may touch. */
function crossing(points: Points, nose: number): string | undefined {
  const upper = points.slice(0, nose + 1).reverse();
  const lower = points.slice(nose);
  for (let x = 0.02; x < 0.975; x += 0.01) {
    if (heightAt(upper, x) < heightAt(lower, x) - 1e-5) return `has sides that cross near x = ${x.toFixed(2)}`;
  }
  return undefined;
}

function heightAt(side: Points, x: number): number {
  const i = Math.max(1, side.findIndex((point) => point[0] >= x));
  const [[x0, y0], [x1, y1]] = [side[i - 1], side[i]];
  return x1 === x0 ? y0 : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
