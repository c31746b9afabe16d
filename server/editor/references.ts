import { type DocumentHighlight, DocumentHighlightKind, type Location, type Position } from "vscode-languageserver";
import type { Span } from "../../grammar/tree";
import { rangeOf } from "../lines";
import type { Model } from "../model/model";
import type { SourceFile } from "../model/resolve/instance";
import type { AirframeService } from "../service";
import { keyOf } from "./names/canonical";
import type { Occurrence } from "./names/meaning";
import { occurrencesAt, occurrencesIn } from "./names/occurrences";
import { offsetIn, rangeIn, type View } from "./view";

/** A name with all that goes by it. */
export interface Mention {
  readonly file: SourceFile;
  readonly span: Span;
  readonly declares: boolean;
}

/** The block, `let` or file whose name stands at a position. */
export function nameAt(view: View, position: Position): { readonly key: string; readonly occurrence: Occurrence } | undefined {
  for (const occurrence of occurrencesAt(view.analysis.model, offsetIn(view, position))) {
    const key = keyOf(occurrence.meaning);
    if (key !== undefined) return { key, occurrence };
  }
  return undefined;
}

/** Every mention in the given texts of what has that key. */
export function mentions(service: AirframeService, uris: Iterable<string>, key: string): Mention[] {
  return [...new Set(uris)].flatMap((uri) => {
    const model = service.analysis(uri)?.model;
    return model ? mentionsIn(model, key) : [];
  });
}

function mentionsIn(model: Model, key: string): Mention[] {
  return occurrencesIn(model).filter((one) => keyOf(one.meaning) === key)
    .map(({ start, end, declares }) => ({ file: model.file, span: { start, end }, declares }));
}

/** The texts that may mention what a view's text knows: itself, those it rests on, and `others` that may rest on them. */
export function around(view: View, others: Iterable<string>): string[] {
  const used = [...view.service.askedBy(view.uri)].filter((uri) => view.service.parsed(uri) !== undefined && uri.endsWith(".airframe"));
  return [...new Set([view.uri, ...used, ...others])];
}

/** Every place that names what is named at a position. `others`: designs besides the one in view to look into. */
export function references(view: View, position: Position, declaration: boolean, others: Iterable<string> = []): Location[] {
  const name = nameAt(view, position);
  if (!name) return [];
  return mentions(view.service, around(view, others), name.key)
    .filter(({ declares }) => declaration || !declares)
    .map(({ file, span }) => ({ uri: file.uri, range: rangeOf(file.parsed, span) }));
}

/** The same within the text, for highlighting. */
export function highlights(view: View, position: Position): DocumentHighlight[] {
  const name = nameAt(view, position);
  if (!name) return [];
  return mentionsIn(view.analysis.model, name.key).map(({ span, declares }) =>
    ({ range: rangeIn(view, span), kind: declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }));
}
