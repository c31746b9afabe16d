import { between, levelOf, shapeOfFile } from "../../tests/server/compute/lattice/refine";

const densities = [0.5, 0.7, 1, 1.4, 2];

/** Halving the vortices may change the neutral point (% of the mean chord) and the lift slope (%) by this; the tests hold it. */
const allowed = { neutralPoint: 0.3, liftSlope: 0.5 };

/** For one design, a line for each density: how far its answers are from those of the finest. */
export function convergence(file: string): readonly string[] {
  const shape = shapeOfFile(file);
  const levels = densities.map((density) => levelOf(shape, density));
  const rows = levels.map((level) => ({ level, off: between(level, levels[levels.length - 1]) }));
  const half = between(levels[1], levels[2]);
  return [
    ...rows.map(({ level, off }) =>
      `${level.density.toFixed(1)} ${String(level.unknowns).padStart(6)}  ${mark(off.neutralPoint)}  ${mark(off.liftSlope)}`),
    `half the vortices of the usual: ${signed(half.neutralPoint)} (allowed ${allowed.neutralPoint}), ${signed(half.liftSlope)} (allowed ${allowed.liftSlope})`,
  ];
}

const signed = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(2)}`;

/** The number, and its place between −1 and 1. */
function mark(value: number): string {
  const width = 10;
  const place = Math.round(Math.max(-1, Math.min(1, value)) * width) + width;
  const line = Array.from({ length: 2 * width + 1 }, (_, i) => (i === place ? "●" : i === width ? "┊" : "·"));
  return `${signed(value)} ${line.join("")}`;
}
