import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parse";
import { format } from "../../grammar/printer/format";
import { kinds } from "../../grammar/vocabulary";

describe("examples of the vocabulary", () => {
  it.each(Object.values(kinds).map((kind) => [kind.name, kind] as const))("of %s are well formed", (_, kind) => {
    expect(parse(kind.example).issues).toEqual([]);
    expect(parse(kind.example).tree.items[0]).toMatchObject({ type: "block", kind: { text: kind.name } });
    for (const { example } of Object.values(kind.properties)) {
      const entry = `let a = ${example}\n`;
      expect(parse(entry).issues).toEqual([]);
      expect(format(entry)).toBe(entry);
    }
  });
});
