import { readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createAirframeService } from "../../../../server/service";
import { solveLattice } from "../../../../server/compute/lattice/solve-lattice";
import { referenceGeometry } from "../../../../server/compute/planform/reference-geometry";
import type { Shape } from "../../../../server/compute/stability/neutral-point";

/** What one density of strips and rows gives for the surfaces of a design. */
export interface Level {
  readonly density: number;
  readonly unknowns: number;
  /** In mean chords. */
  readonly neutralPoint: number;
  /** m² per radian. */
  readonly liftSlope: number;
}

export function levelOf({ surfaces, bodies }: Shape, density: number): Level {
  const { unknowns, neutralPoint, liftSlope } = solveLattice(surfaces, { bodies, density, most: Infinity })!;
  return { density, unknowns, neutralPoint: neutralPoint / referenceGeometry(surfaces, bodies)!.meanChord, liftSlope };
}

/** How far a level is from another, in % of the mean chord and of the other's lift slope. */
export const between = (a: Level, b: Level): { readonly neutralPoint: number; readonly liftSlope: number } => ({
  neutralPoint: 100 * (a.neutralPoint - b.neutralPoint),
  liftSlope: 100 * (a.liftSlope / b.liftSlope - 1),
});

/** The surfaces and bodies of a design file. */
export function shapeOfFile(file: string): Shape {
  const text = (uri: string) => readFileSync(fileURLToPath(uri), "utf8");
  return createAirframeService({ text }).analysis(pathToFileURL(file).href)!.sets[0].facts.shape!.nominal;
}
