import type { NameNode, PathNode } from "../../../grammar/tree";
import { entryOf } from "../../../shared/catalogue";
import { isFigure } from "../../checks/figure-names";
import { loadingBlocks } from "../../model/loadings";
import type { Model } from "../../model/model";
import type { Occurrence } from "./meaning";
import { pathBelow } from "./path";

/** The figure a path names, with the loading before it and the part within it; undefined if it is no figure. */
export function figurePath(path: PathNode, model: Model): Occurrence[] | undefined {
  const { names } = path;
  const text = (from: readonly NameNode[]): string => from.map((n) => n.text).join(".");
  if (names.length < 2) return undefined;
  const loading = loadingBlocks(model.file).find((block) => block.key === names[0].text);
  const own = loading && isFigure(text(names.slice(1))) ? names.slice(1) : names;
  const name = text(own);
  if (!isFigure(name)) return undefined;
  const out: Occurrence[] = [{
    start: own[0].start, end: path.end, declares: false,
    meaning: { type: "figure", name, loading: own === names ? undefined : names[0].text },
  }];
  if (loading && own !== names) {
    out.push({ start: names[0].start, end: names[0].end, meaning: { type: "block", block: loading }, declares: false });
  }
  return [...out, ...part(own, name, model)];
}

/** `main` of `mass.main`. */
function part(names: readonly NameNode[], name: string, model: Model): Occurrence[] {
  const pattern = entryOf(name)?.name;
  if (!pattern?.includes("<path>")) return [];
  const [before, after] = pattern.split("<path>").map((piece) => piece.split(".").filter(Boolean).length);
  const between = names.slice(before, names.length - after);
  return between.length > 0 ? pathBelow(model.file.root, between) : [];
}
