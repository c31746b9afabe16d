import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL, fileURLToPath } from "node:url";
import type { Analysis } from "../server/analysis";
import { putStillFigures, type SlowFigures } from "../server/figures/groups";
import { userPolarStore } from "../server/polar-store";
import { createAirframeService, type AirframeService } from "../server/service";

export const root = resolve(__dirname, "..");

/** The text of a file, by its address; undefined if there is none. */
export function readUri(uri: string): string | undefined {
  try {
    return readFileSync(fileURLToPath(uri), "utf8");
  } catch {
    return undefined;
  }
}

/** A service on texts; section polars are kept for other tests and later runs. */
export const testService = (text: (uri: string) => string | undefined = () => undefined, figures?: SlowFigures): AirframeService =>
  createAirframeService({ text, polars: userPolarStore() }, figures);

/** A file of the project, worked out whole. */
export function analyseFile(...path: string[]): Analysis {
  const analysis = testService(readUri).analysis(pathToFileURL(join(root, ...path)).href);
  if (!analysis) throw new Error(`${path.join("/")} can't be read`);
  return analysis.finishNow();
}

/** A text, worked out whole; `others` are files beside it. */
export function analyseText(text: string, others: Readonly<Record<string, string>> = {}, figures?: SlowFigures): Analysis {
  const uri = "memory:/design.airframe";
  const texts: Record<string, string> = { [uri]: text, ...Object.fromEntries(Object.entries(others).map(([name, t]) => [`memory:/${name}`, t])) };
  const analysis = testService((u) => texts[u], figures).analysis(uri);
  return analysis!.finishNow();
}

/** The same without the figures of flight, for tests of many designs that ask for none of them. */
export const analyseStill = (text: string, others?: Readonly<Record<string, string>>): Analysis => analyseText(text, others, putStillFigures);

/** The value of a figure in SI, in the first loading or the one named. */
export function figureOf(analysis: Analysis, name: string, loading = ""): number | undefined {
  return analysis.set(loading).value(name)?.value;
}
