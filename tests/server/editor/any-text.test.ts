import * as fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument, type Range } from "vscode-languageserver-textdocument";
import { complete } from "../../../server/editor/completion/complete";
import { describe } from "../../../server/editor/completion/describe";
import { completionItems, type ItemData } from "../../../server/editor/completion/to-lsp";
import { definition } from "../../../server/editor/definition";
import { diagnosticsOf } from "../../../server/editor/diagnostics";
import { fixesIn } from "../../../server/editor/fixes";
import { foldingRanges } from "../../../server/editor/folding";
import { formatEdits } from "../../../server/editor/format";
import { inlayHints } from "../../../server/editor/hints";
import { hover } from "../../../server/editor/hover/hover";
import { documentLinks } from "../../../server/editor/links";
import { references } from "../../../server/editor/references";
import { renamed, RenameRefusal } from "../../../server/editor/rename";
import { semanticTokens } from "../../../server/editor/semantic-tokens";
import { documentSymbols } from "../../../server/editor/symbols";
import { viewOf } from "../../../server/editor/view";
import { markdown, plain } from "../../../server/report/card";
import { testService } from "../../service";
import { glider } from "./designs";
import { address } from "./fixture";

const pieces = [
  "}", "{", "(", ")", "[", "]", "=", " = ", ";", "\n", "\r\n", "#", "\"", "😀", "±", " to ", "..", ".", ",", "12", " mm", " g/dm^2", "wing main {", "panel x {",
  "from main", "let q = ", "require ", "stability.static_margin", " within ", "waive ", "for ", "use \"other.airframe\" as o\n", "o.main", "main.span", "main.right",
  "constructor", "__proto__", "loading x {", "weighed { ", "limits { ", "place p from pod { ", "assembly pod { ", "drop = [tip]", "mass.main", "bare.cg.x", "point(main, ",
];

/** A sound design with stretches taken out and odd pieces put in. */
const text = fc.array(fc.record({ at: fc.nat(), length: fc.nat({ max: 60 }), put: fc.array(fc.constantFrom(...pieces), { maxLength: 3 }) }), { maxLength: 5 })
  .map((edits) => edits.reduce((out, { at, length, put }) => {
    const start = at % (out.length + 1);
    return out.slice(0, start) + put.join("") + out.slice(start + length);
  }, glider));

test("no text makes a feature fail or point outside it", () => {
  fc.assert(fc.property(text, fc.nat(), (any, where) => {
    const service = testService((uri) => (uri.endsWith("other.airframe") ? glider : undefined));
    service.update({ uri: address, version: 1, text: any });
    const view = viewOf(service, address)!;
    const document = TextDocument.create(address, "airframe", 1, any);
    const position = document.positionAt(where % (any.length + 1));
    const within = (range: Range): void => {
      const [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
      expect(end).toBeGreaterThanOrEqual(start);
      expect([document.positionAt(start), document.positionAt(end)]).toEqual([range.start, range.end]);
    };
    const told = hover(view, position);
    if (told) {
      within(told.range);
      expect(`${markdown(told.card)}${plain(told.card)}`).not.toMatch(/undefined|NaN|\[object/);
    }
    const completion = complete(view, position);
    for (const item of completion ? completionItems(view, completion, true) : []) {
      within((item.textEdit as { range: Range }).range);
      const card = item.data ? describe(view, (item.data as ItemData).topic) : undefined;
      if (card) expect(markdown(card)).not.toMatch(/undefined|NaN|\[object/);
    }
    const whole = { start: document.positionAt(0), end: document.positionAt(any.length) };
    for (const { range } of diagnosticsOf(view, view.analysis.findings, true)) within(range);
    for (const { range } of documentLinks(view)) within(range);
    for (const { range, selectionRange } of documentSymbols(view)) [range, selectionRange].forEach(within);
    for (const { range } of formatEdits(view)) within(range);
    for (const { uri, range } of references(view, position, true)) if (uri === address) within(range);
    for (const { fix } of fixesIn(view, whole)) for (const edit of fix.edits) expect(edit.end).toBeLessThanOrEqual(any.length);
    definition(view, position);
    foldingRanges(view).forEach(({ startLine, endLine }) => expect(endLine).toBeGreaterThan(startLine));
    inlayHints(view, whole);
    expect(semanticTokens(view).data.every((n) => Number.isInteger(n) && n >= 0)).toBe(true);
    try {
      renamed(view, position, "another_name");
    } catch (error) {
      expect(error).toBeInstanceOf(RenameRefusal);
    }
  }), { numRuns: 150 });
}, 120_000);
