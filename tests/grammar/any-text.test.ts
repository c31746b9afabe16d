import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parse";
import type { ParsedFile } from "../../grammar/tree";
import { example } from "./example";
import { anyText, damaged, likelyText } from "./texts";

/** Spans of all nodes, wherever they hang in the tree. */
function spans(node: unknown, found: { start: number; end: number }[] = []): { start: number; end: number }[] {
  if (typeof node !== "object" || node === null) return found;
  if ("start" in node && "end" in node) found.push(node as { start: number; end: number });
  for (const child of Object.values(node)) spans(child, found);
  return found;
}

function sound({ text, tree, pieces, issues }: ParsedFile): void {
  let at = 0;
  let back = "";
  for (const piece of pieces) {
    if (piece.start !== at || piece.end !== at + piece.text.length) expect.fail(`piece at ${piece.start}, not ${at}`);
    at = piece.end;
    back += piece.text;
  }
  expect(back === text).toBe(true);
  for (const { start, end } of [...spans(tree), ...issues]) {
    if (!(start >= 0 && start <= end && end <= text.length)) expect.fail(`span ${start}–${end} of ${text.length}`);
  }
  // The parser library's own words would mean that a rule met what it has no answer to.
  const own = issues.find(({ message }) => /^(Expect|Redundant)/.test(message));
  expect(own?.message).toBeUndefined();
}

describe("any text", () => {
  it.each([
    ["at random", anyText, 1500], ["of the language's pieces", likelyText, 1500], ["damaged", damaged(example), 300],
  ] as const)("%s gives a tree, and itself back", (_, texts, numRuns) => {
    fc.assert(fc.property(texts, (text) => sound(parse(text))), { numRuns });
  });

  it("of great depth and length is read", () => {
    for (const text of [
      `let a = ${"(".repeat(20000)}`, `let a = ${"[1, ".repeat(20000)}`, `let a = ${"f(".repeat(20000)}1${")".repeat(20000)}`,
      "wing a { ".repeat(20000), "}".repeat(20000), `let a = ${"1 + ".repeat(20000)}1`, `let a = ${"-".repeat(20000)}1`,
      `let a = ${"x.".repeat(20000)}x`, "\"".repeat(20001), "wing ".repeat(20000), "= ".repeat(20000), `let a = 1 ${"m^2*".repeat(9999)}m`,
    ]) sound(parse(text));
  });

  it("that is well formed has no issues", () => {
    expect(parse(example).issues).toEqual([]);
    expect(parse(example.replace(/\n/g, "\r\n")).issues).toEqual([]);
    expect(parse("").issues).toEqual([]);
    expect(parse("\uFEFF# nothing yet").issues).toEqual([]);
  });
});
