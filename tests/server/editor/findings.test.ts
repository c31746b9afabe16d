import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Finding } from "../../../shared/finding";
import { diagnosticsOf, presented } from "../../../server/editor/diagnostics";
import { fixesIn } from "../../../server/editor/fixes";
import { status } from "../../../server/editor/status";
import { rangeOf } from "../../../server/lines";
import { glider } from "./designs";
import { address, marked, opened } from "./fixture";

test("a finding stands at its place, with code, severity and source", () => {
  const { view, text, ranges } = opened("item a { weight = «90»\n at = (0 mm, 0 mm, 0 mm) }");
  const [one, ...others] = diagnosticsOf(view, view.analysis.findings.filter(({ code }) => code === "missing_unit"), false);
  expect(others).toEqual([]);
  expect(one).toMatchObject({ severity: 1, code: "missing_unit", source: "sparwright" });
  expect(marked(text, [one.range])).toBe(marked(text, ranges));
});

test("what may go is marked as needless", () => {
  const { view } = opened("let arm = 1 m\n");
  expect(diagnosticsOf(view, view.analysis.findings, false).find(({ code }) => code === "unused_let")?.tags).toEqual([1]);
});

test("settings change how findings are shown, and never what is found", () => {
  const place = { file: address, start: 0, end: 1 };
  const findings: Finding[] = [
    { code: "a", severity: "warning", message: "", place }, { code: "b", severity: "error", message: "", place }, { code: "c", severity: "hint", message: "", place },
  ];
  expect(presented(findings, { a: "off", b: "hint" }).map(({ code, severity }) => `${code} ${severity}`)).toEqual(["b hint", "c hint"]);
  expect(presented(findings, {})).toEqual(findings);
});

test("a fix is offered where its finding is, and mends the text", () => {
  const text = "item a { weight = 9|0 ; at = (0 mm, 0 mm, 0 mm) }";
  const { view, cursor, text: bare } = opened(text);
  const [offer] = fixesIn(view, { start: cursor, end: cursor });
  const edits = offer.fix.edits.map((edit) => ({ range: rangeOf(view.parsed, edit), newText: edit.text }));
  expect(TextDocument.applyEdits(TextDocument.create(address, "airframe", 1, bare), edits)).toBe("item a { weight = 90 g ; at = (0 mm, 0 mm, 0 mm) }");
  expect(fixesIn(view, { start: { line: 0, character: 1 }, end: { line: 0, character: 2 } })).toEqual([]);
});

test("the headline is of the loading shown, and as grave as what is shown", () => {
  const { view } = opened(glider, {}, "filming");
  const headline = status(view, 3, ["hint", "warning"]);
  expect(headline).toMatchObject({ uri: address, version: 3, loading: "filming", loadings: ["bare", "filming"], mass: { text: "567 g ± 6 g" }, state: "warning" });
  expect(headline.staticMargin?.text).toMatch(/^9\.\d+ % ±/);
  expect(headline.thrustToWeight).toBeUndefined();
  expect(status(view, 3, []).state).toBe("ok");
});
