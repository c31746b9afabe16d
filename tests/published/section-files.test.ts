import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { meanLine } from "../../server/compute/section/mean-line";
import { thinSection } from "../../server/compute/section/thin-section";
import { references } from "../references";

const degrees = 180 / Math.PI;

/** Rows of a comma-separated table under its header; lines that begin with # are remarks. */
function rows(path: string): readonly Readonly<Record<string, string>>[] {
  const [header, ...lines] = readFileSync(path, "utf8").split(/\r?\n/).filter((line) => line !== "" && !line.startsWith("#"));
  const names = header.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((value, i) => [names[i], value])));
}

const points = (path: string): (readonly [number, number])[] =>
  readFileSync(path, "utf8").split(/\r?\n/).slice(1).flatMap((line) => {
    const [x, y] = line.trim().split(/\s+/).map(Number);
    return Number.isFinite(x) && Number.isFinite(y) ? [[x, y] as const] : [];
  });

// Coordinates and the thin-section integrals of their mean lines by another's reading of the same theory, for 36 sections of low
// Reynolds number.
describe("mean lines of coordinate files", () => {
  const tables = ["geometry.csv", "extra_geometry.csv"].map((name) => references("sections", name));
  const sections = tables.flatMap((table) => (table ? rows(table) : []));
  it.skipIf(sections.length === 0)("zero-lift angle and moment", () => {
    for (const { coordinate_file: file, alpha0_thin_deg: angle, cm_c4_thin: moment } of sections) {
      const found = thinSection(meanLine({ type: "coordinates", points: points(references("sections", file)!) })!);
      // Joining sparse points of a nose or a cusp one way or another changes the angle by some hundredths of a degree.
      expect(Math.abs(found.zeroLiftAngle * degrees - Number(angle)), file).toBeLessThan(0.1);
      expect(Math.abs(found.moment - Number(moment)), file).toBeLessThan(0.003);
    }
  });
});
