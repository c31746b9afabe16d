import { expect, test } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver";
import { foldingRanges } from "../../../server/editor/folding";
import { inlayHints } from "../../../server/editor/hints";
import { documentLinks } from "../../../server/editor/links";
import { semanticLegend, semanticTokens } from "../../../server/editor/semantic-tokens";
import { documentSymbols, flatSymbols } from "../../../server/editor/symbols";
import { rangeOf } from "../../../server/lines";
import { glider } from "./designs";
import { opened } from "./fixture";

const lines = (symbols: readonly DocumentSymbol[], indent = ""): string[] =>
  symbols.flatMap(({ name, detail, children }) => [`${indent}${name}: ${detail}`, ...lines(children ?? [], `${indent}  `)]);

test("the outline shows what holds what, with weights", () => {
  expect(lines(documentSymbols(opened(glider).view))).toEqual([
    "Wheatear: airframe", "arm: 640 mm",
    "main: wing, 260 g ± 6 g", "  inner: panel, 175 g ± 4 g", "  tip: panel, 85.1 g ± 2.0 g",
    "stab: tailplane, 40 g", "  half: panel, 40 g",
    "upright: fin, 15 g", "  only: panel, 15 g",
    "ele: servo, 12 g", "pack: battery, 150 g", "camera: item", "bare: loading", "filming: loading",
  ].map((line) => (line.includes("tip") ? expect.stringMatching(/^ {2}tip: panel, 85(\.1)? g ± 2(\.0)? g$/) : line)));
});

test("a symbol's name lies within its range, for any text cut short", () => {
  const inside = ({ range, selectionRange, children, name }: DocumentSymbol): boolean => {
    const key = ({ line, character }: { line: number; character: number }) => line * 1e6 + character;
    return name !== "" && key(range.start) <= key(selectionRange.start) && key(selectionRange.end) <= key(range.end) && (children ?? []).every(inside);
  };
  for (let end = 0; end < glider.length; end += 13) {
    const { view } = opened(glider.slice(0, end));
    expect(documentSymbols(view).every(inside), glider.slice(0, end)).toBe(true);
  }
}, 60_000);

test("for clients without levels the outline is flat, each with what holds it", () => {
  expect(flatSymbols(opened(glider).view).map(({ name, containerName }) => [name, containerName])).toContainEqual(["tip", "main"]);
});

test("blocks, comments and files fold; a closing brace stays in sight", () => {
  const text = `# one
# two
use "a.airframe" as a
use "b.airframe" as b

wing main {
  at = (0 mm, 0 mm, 0 mm)   # beside
  panel a { span = 1 m ; chord = 200 mm }
}
item x {
`;
  expect(foldingRanges(opened(text).view)).toEqual([
    { startLine: 0, endLine: 1, kind: "comment" },
    { startLine: 2, endLine: 3, kind: "imports" },
    { startLine: 5, endLine: 7 },
  ]);
});

test("links lead to the files that are used", () => {
  const links = documentLinks(opened('use "parts/pod.airframe" as pods\n').view);
  expect(links.map(({ target }) => target)).toEqual(["file:///field/parts/pod.airframe"]);
});

test("behind what is required stands what there is, in the loading shown or the one it is for", () => {
  const text = `${glider}require mass.total < 1 kg\nrequire mass.total < 1 kg for filming\nrequire power.static_thrust > 1 N\n`;
  const { view } = opened(text);
  const all = inlayHints(view, rangeOf(view.parsed, { start: 0, end: text.length }));
  expect(all.map(({ label }) => label)).toEqual(["= 477 g ± 6 g", "= 567 g ± 6 g"]);
});

test("names are told apart: blocks, values, words, figures", () => {
  const { view } = opened("let arm = 1 m\nitem a { weight = 9 g ; at = (arm, 0 mm, 0 mm) }\nairframe { class = trainer }\nrequire cg.x < 2 m\n");
  const { data } = semanticTokens(view);
  const found: string[] = [];
  let line = 0;
  let character = 0;
  for (let i = 0; i < data.length; i += 5) {
    line += data[i];
    character = data[i] === 0 ? character + data[i + 1] : data[i + 1];
    found.push(`${line}:${character}+${data[i + 2]} ${semanticLegend.tokenTypes[data[i + 3]]}`);
  }
  expect(found).toEqual(["0:4+3 variable", "1:5+1 class", "1:30+3 variable", "2:19+7 enumMember", "3:8+4 property"]);
});
