import { findProperty } from "../../grammar/vocabulary";
import type { Quantity } from "../../grammar/units/quantity";
import { entryOf, groupsToCome } from "../../shared/catalogue";
import { nearestOf } from "../figures/absence";
import type { FigureSet } from "../figures/figure-set";
import type { Model } from "../model/model";
import { rewrite } from "../model/problems";
import { fitsDimension } from "./limits";
import { readFigures } from "./figure-names";

/** What was measured on the finished model: the figure it stands beside, and the value. */
export interface Measured {
  readonly figure: string;
  readonly value: Quantity;
}

/** The measured values of a design's `weighed` blocks. Names that are no figures, and values of another kind, are said. */
export function readWeighed(model: Model, sets: readonly FigureSet[]): Measured[] {
  const measured: Measured[] = [];
  for (const block of model.file.root.children.values()) {
    if (block.kind !== "weighed") continue;
    for (const [figure, { entry, home }] of block.slots) {
      if (home.file !== model.file || !entry.value || findProperty("weighed", figure)) continue;
      const known = entryOf(figure);
      const group = figure.split(".")[0];
      // Weights are there at once: one that isn't will not come.
      const isPart = known?.name !== "mass.<path>" || sets.some((set) => set.value(figure));
      if (!known || !isPart) {
        if (groupsToCome.includes(group)) continue;
        const near = nearestOf(figure, sets);
        model.problems.add("unknown_name", "error", model.file, entry.path, `there is no figure "${figure}"${near ? `; did you mean ${near}?` : ""}`,
          near ? [rewrite(model.file, entry.path, `Write ${near}`, near)] : undefined);
        continue;
      }
      const value = readFigures(entry.value, model, sets, sets[0]).quantity;
      if (value && fitsDimension(figure, value, known.dimension, entry.value, model)) measured.push({ figure, value });
    }
  }
  return measured;
}
