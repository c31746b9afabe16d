import type { Figure } from "../figures/figure";
import type { FigureSet } from "../figures/figure-set";

const titles: readonly (readonly [title: string, groups: readonly string[]])[] = [
  ["Weight and balance", ["mass", "cg", "inertia"]],
  ["Parts", ["parts"]],
  ["Wing", ["wing"]],
  ["Aerodynamics", ["aero"]],
  ["Stability", ["stability", "modes", "trim"]],
  ["Power", ["power"]],
  ["Flight", ["flight", "motor_out"]],
];

export interface FigureGroup {
  readonly title: string;
  readonly figures: readonly Figure[];
}

/** The figures of a loading in the order and under the headings people read them; groups without any are left out. */
export function grouped(set: FigureSet, wanted: (figure: Figure) => boolean = () => true): FigureGroup[] {
  const all = set.all().filter(wanted);
  const named = new Set(titles.flatMap(([, groups]) => groups));
  const inGroups = (groups: readonly string[]) => all.filter((figure) => groups.includes(groupOf(figure)));
  return [
    ...titles.map(([title, groups]) => ({ title, figures: inGroups(groups) })),
    { title: "Other", figures: all.filter((figure) => !named.has(groupOf(figure))) },
  ].filter((group) => group.figures.length > 0);
}

const groupOf = ({ entry, name }: Figure): string => (entry.name === "mass.<path>" ? "parts" : name.split(".")[0]);
