import type { Analysis } from "../analysis";
import type { Figure } from "../figures/figure";
import type { FigureSet } from "../figures/figure-set";
import { grouped } from "./groups";

/** Ends every text with figures. */
export const caution =
  "Estimates for model aircraft without people aboard. Local law and the flying club's rules come first.";

/** Said of a design whose section polars were not worked out. */
export const calledOff = "Figures that rest on section polars are missing: working them out was called off. A change of the design begins it again.";

/** The figures of some loadings as text for people: one table each, grouped. `wanted` picks figures by name. */
export function figuresText(analysis: Analysis, sets: readonly FigureSet[], wanted?: (name: string) => boolean): string {
  const { title } = sets[0].loading.design;
  const heading = title || "Design without a title";
  return [heading, ...sets.flatMap((set) => tableOf(analysis, set, wanted)), ...(analysis.stopped ? [calledOff] : []), caution].join("\n\n") + "\n";
}

function tableOf(analysis: Analysis, set: FigureSet, wanted?: (name: string) => boolean): string[] {
  const groups = grouped(set, (figure) => wanted?.(figure.name) ?? true);
  const figures = groups.flatMap((group) => group.figures);
  const value = (figure: Figure): string => analysis.say(figure.quantity, figure.entry.style);
  const names = Math.max(0, ...figures.map((figure) => figure.name.length));
  const values = Math.max(0, ...figures.map((figure) => value(figure).length));
  const line = (figure: Figure): string =>
    `  ${figure.name.padEnd(names)}  ${value(figure).padEnd(values)}  ${titleOf(figure)}`.trimEnd();
  const tables = groups.map((group) => [group.title, ...group.figures.map(line)].join("\n"));
  const named = set.loading.block !== undefined;
  const nothing = set.complete ? "No figures: nothing has a weight or a size yet." : "The figures are still being worked out.";
  return [...(named ? [`Loading ${set.loading.name}`] : []), ...(tables.length > 0 ? tables : [nothing])];
}

/** Lines of parts say by their name what they are. */
const titleOf = ({ entry }: Figure): string => (entry.name === "mass.<path>" ? "" : entry.title);
