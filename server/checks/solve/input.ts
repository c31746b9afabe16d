import type { Movable } from "../../compute/powertrain/calibrate";
import type { FigureSet } from "../../figures/figure-set";
import type { Fix } from "../../../shared/finding";
import type { Subject } from "../check";
import { partOf } from "../power/parts";
import { literalOf, literalText } from "./literal";

/** Writes an input of a powerplant's motor or propeller to four digits, where it is written out in this file. */
export function rewriteInput(subject: Subject, set: FigureSet, plant: string, input: Movable, value: number): Fix | undefined {
  const [kind, property] = input.split(".") as ["motor" | "propeller", string];
  const part = partOf(subject, set, plant, kind);
  const slot = part && subject.places.slot(set, part, property);
  const literal = slot && slot.home.file === subject.file ? literalOf(slot.entry.value) : undefined;
  if (!literal) return undefined;
  const text = literalText(value, literal.unit, 10 ** (Math.floor(Math.log10(value)) - 3));
  const { start, end } = literal.span;
  return { title: `Write ${property} = ${text}`, edits: [{ file: subject.file.uri, start, end, text }] };
}
