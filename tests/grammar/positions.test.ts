import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { applyEdits } from "../../grammar/edit";
import { nearest } from "../../grammar/nearest";
import { lineStarts, offsetAt, positionAt } from "../../grammar/positions";

describe("positions", () => {
  const texts = fc.array(fc.constantFrom("a", "é", "😀", "\n", "\r\n", "\r", " "), { maxLength: 30 }).map((parts) => parts.join(""));

  it("agree with the protocol's own text document", () => {
    fc.assert(fc.property(texts, fc.nat(40), fc.nat(8), fc.nat(8), (text, offset, line, character) => {
      const document = TextDocument.create("", "", 0, text);
      const starts = lineStarts(text);
      expect(starts.length).toBe(document.lineCount);
      const at = Math.min(offset, text.length);
      // Between \r and \n the document answers with the place before both; every other offset is the same.
      if (!(text[at - 1] === "\r" && text[at] === "\n")) expect(positionAt(starts, at)).toEqual(document.positionAt(at));
      expect(offsetAt(text, starts, { line, character })).toBe(document.offsetAt({ line, character }));
    }));
  });
});

describe("edits", () => {
  it("are made in any order, and refused where they overlap", () => {
    expect(applyEdits("abcdef", [{ start: 4, end: 5, text: "E" }, { start: 0, end: 1, text: "" }, { start: 6, end: 6, text: "!" }])).toBe("bcdEf!");
    expect(applyEdits("ab", [{ start: 1, end: 1, text: "1" }, { start: 1, end: 1, text: "2" }])).toBe("a12b");
    expect(() => applyEdits("abc", [{ start: 0, end: 2, text: "" }, { start: 1, end: 3, text: "" }])).toThrow(RangeError);
  });
});

describe("the nearest word", () => {
  const words = ["tailplane", "aileron", "elevator", "wing", "mm", "mAh", "chord"];
  it.each([["tailplan", "tailplane"], ["ailreon", "aileron"], ["Wing", "wing"], ["mah", "mAh"], ["MM", "mm"], ["cohrd", "chord"]])("%s is %s", (word, meant) => {
    expect(nearest(word, words)).toBe(meant);
  });
  it.each(["kite", "cm", "x", "", "wing"])("of %j is none", (word) => expect(nearest(word, words)).toBeUndefined());
});
