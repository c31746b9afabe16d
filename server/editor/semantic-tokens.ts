import { SemanticTokensBuilder, type SemanticTokens, type SemanticTokensLegend } from "vscode-languageserver";
import { positionOf } from "../lines";
import type { Meaning } from "./names/meaning";
import { occurrencesIn } from "./names/occurrences";
import type { View } from "./view";

const types = ["class", "variable", "enumMember", "property", "namespace"] as const;
const modifiers = ["declaration", "readonly"] as const;

export const semanticLegend: SemanticTokensLegend = { tokenTypes: [...types], tokenModifiers: [...modifiers] };

/** What only the model knows: whether a name is a block, a value, a word, a figure or a file. */
export function semanticTokens(view: View): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  let end = 0;
  for (const { start, end: stop, meaning, declares } of occurrencesIn(view.analysis.model)) {
    const type = typeOf(meaning);
    // The part within a figure's name has its colour; a name over two lines can't be told.
    if (type === undefined || start < end) continue;
    const { line, character } = positionOf(view.parsed, start);
    if (positionOf(view.parsed, stop).line !== line) continue;
    builder.push(line, character, stop - start, types.indexOf(type), (declares ? 1 : 0) + (meaning.type === "let" ? 2 : 0));
    end = stop;
  }
  return builder.build();
}

function typeOf(meaning: Meaning): (typeof types)[number] | undefined {
  switch (meaning.type) {
    case "block":
    case "side":
      return "class";
    case "let":
      return "variable";
    case "word":
      return "enumMember";
    case "figure":
    case "derived":
      return "property";
    case "alias":
      return "namespace";
    default:
      return undefined;
  }
}
