import type { Position, Range } from "vscode-languageserver-textdocument";
import type { ParsedFile, Span } from "../../grammar/tree";
import type { Analysis } from "../analysis";
import type { System } from "../checks/say";
import type { FigureSet } from "../figures/figure-set";
import { offsetOf, rangeOf } from "../lines";
import type { AirframeService } from "../service";

/** What a feature looks at: one text worked out, in the loading its reader has chosen. */
export interface View {
  readonly service: AirframeService;
  readonly uri: string;
  readonly parsed: ParsedFile;
  readonly analysis: Analysis;
  /** The loading whose figures are shown. */
  readonly set: FigureSet;
  readonly system: System;
}

/** The view of a text; undefined if it can't be read. `loading`: by name, the first where there is none of that name. */
export function viewOf(service: AirframeService, uri: string, loading = ""): View | undefined {
  const analysis = service.analysis(uri);
  if (!analysis) return undefined;
  const system = service.document(uri)?.units ?? service.units;
  return { service, uri, analysis, parsed: analysis.model.file.parsed, set: analysis.set(loading), system };
}

export const offsetIn = (view: View, position: Position): number => offsetOf(view.parsed, position);

export const rangeIn = (view: View, span: Span): Range => rangeOf(view.parsed, span);
