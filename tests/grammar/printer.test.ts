import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../grammar/edit";
import { parse } from "../../grammar/parse";
import { format, formatEdits } from "../../grammar/printer/format";
import { commentsOf, sameMeaning } from "../../grammar/printer/same";
import { documents } from "./documents";
import { example } from "./example";
import { anyText, damaged, likelyText } from "./texts";

function safe(text: string): void {
  const formatted = format(text);
  expect(format(formatted)).toBe(formatted);
  const [before, after] = [parse(text), parse(formatted)];
  expect(commentsOf(after)).toEqual(commentsOf(before));
  expect(sameMeaning(before, after)).toBe(true);
  expect(applyEdits(text, formatEdits(text))).toBe(formatted);
}

describe("formatting is safe", () => {
  it("on well-formed documents, and changes their layout", () => {
    let changed = 0;
    fc.assert(fc.property(documents, (text) => {
      fc.pre(parse(text).issues.length === 0);
      safe(text);
      if (format(text) !== text) changed++;
      for (const line of format(text).split(/\r?\n/)) expect(line).not.toMatch(/\t|\u00A0|[ ]$/);
    }), { numRuns: 300 });
    expect(changed).toBeGreaterThan(150);
  }, 60_000);

  it.each([
    ["of the language's pieces", likelyText, 1500], ["at random", anyText, 500], ["damaged", damaged(example), 300],
  ] as const)("on text %s", (_, texts, numRuns) => {
    fc.assert(fc.property(texts, safe), { numRuns });
  }, 60_000);
});
