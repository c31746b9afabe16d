import * as fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "../../../grammar/parse";
import type { TextEdit } from "../../../grammar/tree";
import { editsBetween } from "../../../server/editor/text-edits";

const applied = (text: string, edits: readonly TextEdit[]): string =>
  [...edits].reverse().reduce((out, { start, end, text: put }) => out.slice(0, start) + put + out.slice(end), text);

const edits = (from: string, to: string): TextEdit[] => editsBetween(parse(from).pieces, parse(to).pieces);

test("applied, the edits give the other text, whatever the two are", () => {
  const text = fc.array(fc.constantFrom("wing", " ", "  ", "\n", "{", "}", "=", "12", "mm", "# a", "\"x\"", ";", "²", "µ"), { maxLength: 20 }).map((all) => all.join(""));
  fc.assert(fc.property(text, text, (from, to) => {
    expect(applied(from, edits(from, to))).toBe(to);
  }));
});

test("only what differs is touched", () => {
  expect(edits("a  =  1 mm\nb = 2 mm", "a = 1 mm\nb = 2 mm")).toEqual([{ start: 1, end: 3, text: " " }, { start: 4, end: 6, text: " " }]);
  expect(edits("a = 1", "a = 1")).toEqual([]);
});
