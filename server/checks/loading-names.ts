import { nearest } from "../../grammar/nearest";
import type { NameNode } from "../../grammar/tree";
import type { FigureSet } from "../figures/figure-set";
import type { Model } from "../model/model";
import { rewrite } from "../model/problems";

/** Says it where `for` names a loading that the design doesn't have. */
export function findUnknownLoading(name: NameNode, model: Model, sets: readonly FigureSet[]): void {
  const names = sets.map((set) => set.loading.name);
  if (names.includes(name.text)) return;
  const near = nearest(name.text, names);
  model.problems.add("unknown_name", "error", model.file, name, `there is no loading "${name.text}"${near ? `; did you mean ${near}?` : ""}`,
    near ? [rewrite(model.file, name, `Write ${near}`, near)] : undefined);
}
