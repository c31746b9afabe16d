import { findProperty } from "../../../grammar/vocabulary";
import { checks } from "../../checks/registry";
import { figureCard } from "../../report/account";
import type { Card } from "../../report/card";
import { blockCard } from "../hover/blocks";
import { checkCard, letCard } from "../hover/hover";
import { functionCard, keywordCard, kindCard, propertyCard, unitCard } from "../hover/words";
import type { View } from "../view";
import type { Topic } from "./item";

/** What there is to say of an item. */
export function describe(view: View, { about, name, of }: Topic): Card | undefined {
  const { file } = view.analysis.model;
  switch (about) {
    case "kind":
      return kindCard(name);
    case "property": {
      const property = of === undefined ? undefined : findProperty(of, name);
      return property && of !== undefined ? propertyCard(property, of) : undefined;
    }
    case "statement":
      return keywordCard(name);
    case "unit":
      return unitCard(name);
    case "function":
      return functionCard(name);
    case "figure":
      return figureCard(name, view.analysis, view.set);
    case "check":
      return checks.some((check) => check.code === name) ? checkCard(name) : undefined;
    case "let":
      return file.lets.has(name) ? letCard(view, file, name) : undefined;
    case "block":
    case "loading": {
      let block = file.root;
      for (const part of name.split(".")) block = block.children.get(part) ?? block;
      return block === file.root ? undefined : blockCard(view, block);
    }
    default:
      return undefined;
  }
}
