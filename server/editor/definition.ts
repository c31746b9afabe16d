import type { Location, Position } from "vscode-languageserver";
import type { Span } from "../../grammar/tree";
import { rangeOf } from "../lines";
import type { SourceFile } from "../model/resolve/instance";
import { canonical, nameOf } from "./names/canonical";
import type { Meaning } from "./names/meaning";
import { occurrencesAt } from "./names/occurrences";
import { offsetIn, type View } from "./view";

/** Where the name at a position is declared, in whatever file. */
export function definition(view: View, position: Position): Location | undefined {
  for (const { meaning } of occurrencesAt(view.analysis.model, offsetIn(view, position))) {
    const found = declarationOf(meaning);
    if (found) return { uri: found.file.uri, range: rangeOf(found.file.parsed, found.span) };
  }
  return undefined;
}

interface Declaration {
  readonly file: SourceFile;
  readonly span: Span;
}

function declarationOf(meaning: Meaning): Declaration | undefined {
  switch (meaning.type) {
    case "block":
    case "side":
    case "derived": {
      const block = canonical(meaning.block);
      const span = nameOf(block);
      return span && { file: block.file, span };
    }
    case "property": {
      const slot = meaning.block.slots.get(meaning.property.name);
      return slot && { file: slot.home.file, span: slot.entry.path };
    }
    case "let": {
      const span = meaning.file.lets.get(meaning.name)?.name;
      return span && { file: meaning.file, span };
    }
    case "alias":
      return meaning.used ? { file: meaning.used, span: { start: 0, end: 0 } } : aliasIn(meaning.file, meaning.name);
    case "file":
      return { file: meaning.file, span: { start: 0, end: 0 } };
    default:
      return undefined;
  }
}

function aliasIn(file: SourceFile, name: string): Declaration | undefined {
  for (const item of file.tree.items) if (item.type === "use" && item.name?.text === name) return { file, span: item.name };
  return undefined;
}
