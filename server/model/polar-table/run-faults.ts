import type { MeasuredPoint } from "../design/geometry";

interface Line extends MeasuredPoint {
  readonly line: number;
  readonly reynolds: number;
}

/** Points at one Reynolds number, at least: fewer show no slope and no limit. */
const least = 5;

/** No section's lift rises faster per radian, and none is measured that rises as slowly up to its limit. */
const [slowest, fastest] = [1, 15];

const degrees = (angle: number): string => `${+((angle * 180) / Math.PI).toFixed(2)} deg`;

/** What is wrong with the points of one Reynolds number, by rising angle. */
export function faultOfRun(run: readonly Line[]): string | undefined {
  const reynolds = Math.round(run[0].reynolds);
  if (run.length < least) return `has ${run.length === 1 ? "1 point" : `${run.length} points`} at a Reynolds number of ${reynolds}; a polar needs at least ${least}`;
  const back = run.find(({ angle }, i) => i > 0 && angle <= run[i - 1].angle);
  if (back) return `has angles that go back at ${degrees(back.angle)} on its line ${back.line}; at each Reynolds number they must rise, or fall, throughout`;
  return slopeFault(run, reynolds);
}

function slopeFault(run: readonly Line[], reynolds: number): string | undefined {
  const top = run.reduce((best, line) => (line.lift > best.lift ? line : best));
  const bottom = run.slice(0, run.indexOf(top) + 1).reduce((best, line) => (line.lift < best.lift ? line : best));
  const slope = top === bottom ? 0 : (top.lift - bottom.lift) / (top.angle - bottom.angle);
  if (slope > fastest) return `has lift that rises by ${slope.toFixed(0)} a radian at a Reynolds number of ${reynolds}; are its angles in radians?`;
  if (slope < slowest) {
    const why = slope > 0 && slope < 0.3 ? "are its angles in degrees?" : "a polar needs its rising part, up to the lift limit";
    return `has lift that rises by ${slope.toFixed(2)} a radian at a Reynolds number of ${reynolds}; ${why}`;
  }
  return undefined;
}
