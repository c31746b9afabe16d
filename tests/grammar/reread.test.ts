import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parse";
import { changeBetween } from "../../grammar/reread";
import type { ParsedFile } from "../../grammar/tree";
import { documents } from "./documents";
import { example } from "./example";
import { damaged } from "./texts";

/** The same tree and issues as from scratch; gives whether any node was taken over. */
function same(before: ParsedFile, text: string): boolean {
  const [again, fresh] = [parse(text, before), parse(text)];
  expect(again.issues).toEqual(fresh.issues);
  expect(again.tree).toEqual(fresh.tree);
  expect(again.pieces.map((piece) => piece.text).join("")).toBe(text);
  const nodes = new Set<unknown>(before.tree.items);
  return again.tree.items.some((item) => nodes.has(item));
}

describe("a text read again after an edit", () => {
  it("gives what reading it from scratch gives, wherever the edit is", () => {
    let kept = 0;
    fc.assert(fc.property(damaged(example), (text) => void (kept += same(parse(example), text) ? 1 : 0)), { numRuns: 400 });
    expect(kept).toBeGreaterThan(80);
  });

  it("on any well-formed text", () => {
    fc.assert(fc.property(documents.chain((text) => fc.tuple(fc.constant(text), damaged(text))), ([text, other]) => void same(parse(text), other)),
      { numRuns: 400 });
  });

  it("keystroke by keystroke, through texts that are half written", () => {
    const typed = "\nlet extra = 12 mm + (3 mm * 2)\nfin more { at = (1 m, 0 m, 0 m) ; panel p { span = 2 m ; chord = 1 m } }";
    const at = example.indexOf("\ntailplane");
    let known = parse(example);
    for (let n = 1; n <= typed.length; n++) {
      const text = example.slice(0, at) + typed.slice(0, n) + example.slice(at);
      same(known, text);
      known = parse(text, known);
    }
  });

  it("keeps the statements before the edit, and takes nothing over from a text with a mistake", () => {
    const known = parse("let a = 1\nlet b = 2\nlet c = 3\n");
    const again = parse("let a = 1\nlet b = 25\nlet c = 3\n", known);
    expect(again.tree.items[0]).toBe(known.tree.items[0]);
    expect(again.tree.items[2]).toMatchObject({ start: 21, end: 30 });
    expect(changeBetween(parse("let a = \nlet b = 2\n"), "let a = 1\nlet b = 2\n")).toBeUndefined();
  });
});
