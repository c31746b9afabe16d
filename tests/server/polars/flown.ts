import { plain } from "../../../grammar/units/quantity";
import { putAero } from "../../../server/figures/aero";
import type { SlowFigures } from "../../../server/figures/groups";

/** What was done: runs over the figures, and answers that were not remembered. */
export interface Done {
  runs: number;
  solved: number;
}

/** A figure that the designs of these tests have not otherwise. */
export const flownFigure = "stability.canard_volume";

/** The neutral point as the project works it out, and a figure that rests on the polars of the first panel: its least lift limit at these Reynolds numbers. */
export function flown(reynolds: readonly number[], done: Done = { runs: 0, solved: 0 }): SlowFigures {
  return function* (set, memory, sections) {
    done.runs++;
    yield* putAero(set, memory);
    const shape = set.facts.shape?.nominal.surfaces[0]?.halves[0]?.panels[0]?.inner.section.shape;
    if (!shape) return;
    const limits = memory.recall("lift limits", { shape, reynolds }, () => {
      done.solved++;
      return reynolds.map((each) => sections({ shape }, each)?.liftMax);
    });
    if (limits.some((each) => each === undefined)) return;
    set.put(flownFigure, plain(Math.min(...limits.map((each) => each ?? 0))), { formula: "least lift limit", inputs: [], source: "made up" });
  };
}
