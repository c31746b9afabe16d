import { TextDocument, type Position, type Range } from "vscode-languageserver-textdocument";
import { viewOf, type View } from "../../../server/editor/view";
import type { AirframeService } from "../../../server/service";
import { testService } from "../../service";

/** A text with a mark for the cursor, `|`, and around ranges, `«…»`. */
export interface Fixture {
  readonly text: string;
  readonly cursor: Position;
  readonly ranges: readonly Range[];
}

export const address = "file:///field/design.airframe";

export function fixture(marked: string): Fixture {
  let text = "";
  let cursor = 0;
  const opens: number[] = [];
  const spans: { start: number; end: number }[] = [];
  for (const sign of marked) {
    if (sign === "|") cursor = text.length;
    else if (sign === "«") opens.push(text.length);
    else if (sign === "»") spans.push({ start: opens.pop()!, end: text.length });
    else text += sign;
  }
  const document = TextDocument.create(address, "airframe", 1, text);
  const ranges = spans.sort((a, b) => a.start - b.start).map(({ start, end }) => ({ start: document.positionAt(start), end: document.positionAt(end) }));
  return { text, cursor: document.positionAt(cursor), ranges };
}

export interface Opened extends Fixture {
  readonly service: AirframeService;
  readonly view: View;
}

/** Opens a marked text, with other files beside it by name, all slow work done. */
export function opened(marked: string, files: Readonly<Record<string, string>> = {}, loading = ""): Opened {
  const parts = fixture(marked);
  const service = testService((uri) => files[uri.slice(uri.lastIndexOf("/") + 1)]);
  service.update({ uri: address, version: 1, text: parts.text });
  service.analysis(address)!.finishNow();
  return { ...parts, service, view: viewOf(service, address, loading)! };
}

/** The same text with these ranges marked. */
export function marked(text: string, ranges: readonly Range[]): string {
  const document = TextDocument.create(address, "airframe", 1, text);
  const sorted = [...ranges].sort((a, b) => document.offsetAt(b.start) - document.offsetAt(a.start));
  return sorted.reduce((out, { start, end }) => {
    const [from, to] = [document.offsetAt(start), document.offsetAt(end)];
    return `${out.slice(0, from)}«${out.slice(from, to)}»${out.slice(to)}`;
  }, text);
}
