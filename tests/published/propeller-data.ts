import { readFileSync } from "node:fs";
import type { BladeStation, Propeller } from "../../server/model/design/power";
import { references } from "../references";

export const inch = 0.0254;
export const rpm = Math.PI / 30;

export interface Measured {
  readonly id: string;
  readonly propeller: Propeller;
  /** Static coefficients at 60 m/s tip speed. */
  readonly thrust: number;
  readonly power: number;
}

type Row = readonly [id: string, diameter: number, pitch: number, type: "thin" | "wide" | "thick" | "folding", thrust: number, power: number];

/**
 * J. B. Brandt, R. W. Deters, G. K. Ananda, O. D. Dantsker and M. S. Selig, UIUC Propeller Database, vols 1 and 3: the static
 * runs of eleven two-blade propellers, each smoothed by a quadratic in rpm and read at 60 m/s tip speed. Own reading.
 */
const rows: readonly Row[] = [
  ["apcsp_7x6", 7, 6, "thick", 0.0935, 0.072],
  ["apce_9x6", 9, 6, "thin", 0.1151, 0.0515],
  ["apce_10x5", 10, 5, "thin", 0.0956, 0.0367],
  ["apce_10x7", 10, 7, "thin", 0.1063, 0.053],
  ["apce_11x5.5", 11, 5.5, "thin", 0.0862, 0.0311],
  ["apce_14x12", 14, 12, "thin", 0.0916, 0.0633],
  ["apce_17x12", 17, 12, "thin", 0.0898, 0.0525],
  ["apcsf_10x4.7", 10, 4.7, "wide", 0.1192, 0.048],
  ["gwssf_11x8", 11, 8, "wide", 0.1496, 0.0767],
  ["apcsp_10x6", 10, 6, "thick", 0.1101, 0.0525],
  ["ancf_12x8", 12, 8, "folding", 0.1068, 0.0411],
];

export const measured: readonly Measured[] = rows.map(([id, diameter, pitch, type, thrust, power]) => ({
  id, thrust, power, propeller: propellerOf(diameter, pitch, type),
}));

/** By nominal size in inches. */
export function propellerOf(diameter: number, pitch: number, type: "thin" | "wide" | "thick" | "folding", blades = 2): Propeller {
  return {
    diameter: diameter * inch, pitch: pitch * inch, blades, clockwise: true,
    family: type === "folding" ? "thin" : type, folding: type === "folding",
  };
}

/** Rotation at a tip speed. */
export const atTipSpeed = (propeller: Propeller, speed: number): number => (2 * speed) / propeller.diameter;

/** The numbers of a reference file, header left out. */
export function table(file: string): number[][] | undefined {
  const path = references("propellers", file);
  return path === undefined ? undefined : rowsOf(path).map((row) => row.map(Number));
}

export function textTable(file: string): string[][] | undefined {
  const path = references("propellers", file);
  return path === undefined ? undefined : rowsOf(path);
}

function rowsOf(path: string): string[][] {
  return readFileSync(path, "utf8").split(/\r?\n/).filter((line) => line && !line.startsWith("#")).slice(1).map((line) => line.split(","));
}

export function stationsOf(id: string): BladeStation[] | undefined {
  return table(`${id}_geom.csv`)?.map(([radius, chord, degrees]) => ({ radius, chord, angle: (degrees * Math.PI) / 180 }));
}

/** Least-squares quadratic of y over x, read at one x. */
export function quadraticAt(xs: readonly number[], ys: readonly number[], at: number): number {
  const middle = mean(xs);
  const scale = Math.max(...xs.map((x) => Math.abs(x - middle)));
  const matrix = [0, 1, 2].map((i) => [0, 1, 2].map((j) => mean(xs.map((x) => ((x - middle) / scale) ** (i + j)))));
  const right = [0, 1, 2].map((i) => mean(xs.map((x, n) => ys[n] * ((x - middle) / scale) ** i)));
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      if (j === i) continue;
      const share = matrix[j][i] / matrix[i][i];
      for (let k = 0; k < 3; k++) matrix[j][k] -= share * matrix[i][k];
      right[j] -= share * right[i];
    }
  }
  const x = (at - middle) / scale;
  return right.reduce((sum, r, i) => sum + (r / matrix[i][i]) * x ** i, 0);
}

export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** The error below which this share of all lie. */
export function within(errors: readonly number[], share: number): number {
  const sorted = errors.map(Math.abs).sort((a, b) => a - b);
  return sorted[Math.ceil(share * sorted.length) - 1];
}
