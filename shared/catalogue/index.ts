import { aeroEntries, stabilityEntries, wingEntries } from "./aerodynamics";
import type { FigureEntry } from "./entry";
import { flightEntries, modeEntries, trimEntries } from "./flight";
import { massEntries } from "./mass";
import { motorOutEntries } from "./motor-out";
import { powerEntries } from "./power";

export type { FigureEntry } from "./entry";

/** All figures that are computed, in the order people read them. */
export const catalogue: readonly FigureEntry[] = [
  ...massEntries, ...wingEntries, ...aeroEntries, ...stabilityEntries, ...trimEntries, ...modeEntries, ...powerEntries, ...flightEntries, ...motorOutEntries,
];

const byName = new Map(catalogue.map((entry) => [entry.name, entry]));
const patterns = catalogue.filter((entry) => entry.name.includes("<path>")).map((entry) => {
  const [before, after] = entry.name.split("<path>");
  return { entry, before, after };
});

/** Names that the definitions list and that are not computed yet, by their beginnings. */
export const groupsToCome: readonly string[] = ["structure", "gear", "control", "failure", "build"];

/** The entry a figure's name belongs to; a name with a path finds its pattern. */
export function entryOf(name: string): FigureEntry | undefined {
  const exact = byName.get(name);
  if (exact) return exact;
  const fits = patterns.find(({ before, after }) => name.startsWith(before) && name.endsWith(after) && name.length > before.length + after.length);
  if (fits) return fits.entry;
  // With a single powerplant its figures stand without the path too.
  const short = /^power\.(static_rpm)$/.exec(name);
  return short ? byName.get(`power.<path>.${short[1]}`) : undefined;
}
