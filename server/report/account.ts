import { entryOf } from "../../shared/catalogue";
import type { Analysis } from "../analysis";
import { absenceOf } from "../figures/absence";
import type { Figure, Input } from "../figures/figure";
import type { FigureSet } from "../figures/figure-set";
import type { Say } from "../checks/say";
import type { Card, Part, Row } from "./card";

/** What a figure is and comes to in each loading, and how it was worked out in the one shown. */
export function figureCard(name: string, analysis: Analysis, shown: FigureSet): Card {
  const { say, sets } = analysis;
  const entry = entryOf(name);
  const title = entry ? `${entry.title} \`${name}\`` : `\`${name}\``;
  const figure = shown.get(name);
  const values = sets.map((set): Row => [set.loading.name, valueIn(set, name, say)]);
  const known = sets.some((set) => set.get(name));
  const parts: Part[] = known ? [{ rows: values }] : [sentence(whyNot(name, shown))];
  if (entry) parts.push(entry.text);
  if (figure) parts.push(...accountOf(figure, say, sets.length > 1 ? shown.loading.name : undefined));
  return { title, parts };
}

function valueIn(set: FigureSet, name: string, say: Say): string {
  const figure = set.get(name);
  return figure ? say(figure.quantity, figure.entry.style) : whyNot(name, set);
}

/** Why a figure isn't there, or that it may still come. */
export function whyNot(name: string, set: FigureSet): string {
  if (set.complete) return `absent: ${absenceOf(name, set)}`;
  return set.stopped ? "not worked out: that was called off" : "still being worked out";
}

const sentence = (text: string): string => `${text[0].toUpperCase()}${text.slice(1)}.`;

function accountOf({ account }: Figure, say: Say, loading: string | undefined): Part[] {
  const rows = account.inputs.map((input): Row => [input.name, inputText(input, say)]);
  return [
    `How${loading ? ` (${loading})` : ""}: ${account.formula}`,
    ...(rows.length > 0 ? [{ rows }] : []),
    `Source: ${account.source}`,
    ...(account.notModelled ? [`Not modelled: ${account.notModelled}`] : []),
  ];
}

const inputText = ({ name, value }: Input, say: Say): string =>
  typeof value === "string" ? value : say(value, entryOf(name)?.style);
