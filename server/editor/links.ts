import type { DocumentLink } from "vscode-languageserver";
import { relativeUri } from "../model/resolve/files";
import { rangeIn, type View } from "./view";

/** The files that `use` names. */
export function documentLinks(view: View): DocumentLink[] {
  return view.parsed.tree.items.flatMap((item): DocumentLink[] => {
    if (item.type !== "use" || !item.path) return [];
    const target = relativeUri(view.uri, item.path.text);
    return target === undefined ? [] : [{ range: rangeIn(view, item.path), target }];
  });
}
