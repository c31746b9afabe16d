import type { Panels } from "../outline/panels";
import { look, seen, sourceStream, sourceVelocity, vortexVelocity } from "./kernels";
import { responses, type PotentialFlow } from "./potential";

/** The line the wake runs along from the trailing edge, by panels; ends are x, y, one more than there are panels. */
export interface WakeLine {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly length: Float64Array;
  readonly tx: Float64Array;
  readonly ty: Float64Array;
}

/** What sources and the stream at infinity do at the wake's ends, and what the wake's sources do at the outline's nodes. */
export interface WakeFlow {
  readonly line: WakeLine;
  /** Speed along the wake at its ends after the first, without sources. */
  readonly speed: Float64Array;
  /** At those ends: by source sheets on the outline's panels, then on the wake's; row by end. */
  readonly bySource: Float64Array;
  /** At the outline's nodes, by source sheets on the wake's panels; row by node. */
  readonly onOutline: Float64Array;
}

const panels = 20;
const first = 0.005;
const growth = 1.25;

const p = seen();
const [a, b, source] = [{ along: 0, off: 0 }, { along: 0, off: 0 }, { along: 0, off: 0 }];

/** The wake at an angle, rad, laid along the streamline from the trailing edge, about two chords far. Remembered with the flow. */
export function wakeAt(flow: PotentialFlow, speeds: Float64Array, angle: number): WakeFlow {
  const key = Math.round(angle * 1e9);
  let wake = flow.wakes.get(key);
  if (!wake) flow.wakes.set(key, (wake = wakeFlow(flow, speeds, angle)));
  return wake;
}

function wakeFlow(flow: PotentialFlow, speeds: Float64Array, angle: number): WakeFlow {
  const line = layLine(flow.panels, speeds, angle);
  const outline = flow.panels;
  const [n, columns] = [outline.count, outline.count - 1 + panels];
  const stream = new Float64Array(n * panels);
  for (let i = 0; i < n - 1; i++) {
    for (let k = 0; k < panels; k++) {
      look(p, outline.x[i], outline.y[i], line.x[k], line.y[k], line.length[k], line.tx[k], line.ty[k]);
      stream[i * panels + k] = -sourceStream(p, true);
    }
  }
  const onOutline = responses(flow.factored, stream, panels, n);
  const speed = new Float64Array(panels);
  const bySource = new Float64Array(panels * columns);
  const byVortex = new Float64Array(n);
  for (let k = 0; k < panels; k++) {
    const [tx, ty] = tangent(line, k + 1);
    vortexRow(byVortex, outline, line.x[k + 1], line.y[k + 1], tx, ty);
    speed[k] = Math.cos(angle) * tx + Math.sin(angle) * ty + dot(byVortex, speeds);
    for (let j = 0; j < n - 1; j++) bySource[k * columns + j] = outlineSource(outline, j, line.x[k + 1], line.y[k + 1], tx, ty);
    addProduct(bySource, k * columns, byVortex, flow.bySource, n - 1);
    addProduct(bySource, k * columns + n - 1, byVortex, onOutline, panels);
    addWakeSources(bySource, k * columns + n - 1, line, k + 1, tx, ty);
  }
  return { line, speed, bySource, onOutline };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

/** Adds a row times a matrix of so many columns. */
function addProduct(out: Float64Array, at: number, row: Float64Array, matrix: Float64Array, columns: number): void {
  for (let i = 0, from = 0; i < row.length; i++) {
    const factor = row[i];
    for (let j = 0; j < columns; j++, from++) out[at + j] += factor * matrix[from];
  }
}

/** Direction at an end: the mean of the panels that meet there. */
function tangent({ tx, ty, count }: WakeLine, end: number): readonly [number, number] {
  const [x, y] = end < count ? [tx[end - 1] + tx[end], ty[end - 1] + ty[end]] : [tx[end - 1], ty[end - 1]];
  const size = Math.hypot(x, y);
  return [x / size, y / size];
}

/** Velocity at a point in a direction, by node strengths. */
function vortexRow(out: Float64Array, { count, x, y, length, tx, ty }: Panels, px: number, py: number, dx: number, dy: number): void {
  out.fill(0);
  for (let j = 0; j < count - 1; j++) {
    look(p, px, py, x[j], y[j], length[j], tx[j], ty[j]);
    vortexVelocity(p, a, b);
    const [along, off] = [tx[j] * dx + ty[j] * dy, ty[j] * dx - tx[j] * dy];
    out[j] += a.along * along + a.off * off;
    out[j + 1] += b.along * along + b.off * off;
  }
}

function outlineSource({ x, y, length, tx, ty }: Panels, j: number, px: number, py: number, dx: number, dy: number): number {
  look(p, px, py, x[j], y[j], length[j], tx[j], ty[j]);
  sourceVelocity(p, source);
  return source.along * (tx[j] * dx + ty[j] * dy) + source.off * (ty[j] * dx - tx[j] * dy);
}

/** Sources of the wake at one of its own ends; next to it their strength is taken to run straight from panel to panel. */
function addWakeSources(out: Float64Array, at: number, { count, x, y, length, tx, ty }: WakeLine, end: number, dx: number, dy: number): void {
  for (let j = 0; j < count; j++) {
    if (j === end || j === end - 1) continue;
    look(p, x[end], y[end], x[j], y[j], length[j], tx[j], ty[j]);
    sourceVelocity(p, source);
    out[at + j] += source.along * (tx[j] * dx + ty[j] * dy) + source.off * (ty[j] * dx - tx[j] * dy);
  }
  if (end === count) return;
  const [before, after] = [length[end - 1], length[end]];
  const log = Math.log(before / after) / (before + after);
  const jump = 1 + Math.LN2;
  out[at + end - 1] += (log * after + jump) / (2 * Math.PI);
  out[at + end] += (log * before - jump) / (2 * Math.PI);
}

function layLine(outline: Panels, speeds: Float64Array, angle: number): WakeLine {
  const n = outline.count;
  const [x, y] = [new Float64Array(panels + 1), new Float64Array(panels + 1)];
  const [length, tx, ty] = [new Float64Array(panels), new Float64Array(panels), new Float64Array(panels)];
  [x[0], y[0]] = [outline.x[0], outline.y[0]];
  const across = new Float64Array(n);
  let [dx, dy] = [outline.tx[n - 2] - outline.tx[0], outline.ty[n - 2] - outline.ty[0]];
  for (let k = 0; k < panels; k++) {
    length[k] = first * growth ** k;
    if (k > 0) {
      const velocity = (ex: number, ey: number, px: number, py: number) => {
        vortexRow(across, outline, px, py, ex, ey);
        return Math.cos(angle) * ex + Math.sin(angle) * ey + dot(across, speeds);
      };
      const [px, py] = [x[k] + 0.5 * length[k] * tx[k - 1], y[k] + 0.5 * length[k] * ty[k - 1]];
      [dx, dy] = [velocity(1, 0, px, py), velocity(0, 1, px, py)];
    }
    const size = Math.hypot(dx, dy);
    [tx[k], ty[k]] = [dx / size, dy / size];
    [x[k + 1], y[k + 1]] = [x[k] + length[k] * tx[k], y[k] + length[k] * ty[k]];
  }
  return { count: panels, x, y, length, tx, ty };
}
