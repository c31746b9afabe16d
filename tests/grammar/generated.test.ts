import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compiled, generated, stale } from "../../.scripts/generate";
import { withWords, words } from "../../.scripts/generate/reference";
import { snippets } from "../../.scripts/generate/snippets";
import { textmate } from "../../.scripts/generate/textmate";
import { parse } from "../../grammar/parse";
import { kinds } from "../../grammar/vocabulary";
import { colour } from "./tokenise";

describe("generated files", () => {
  it("are what the vocabulary gives now; else run npm run generate", () => expect(stale(generated())).toEqual([]));

  // The compiler takes some seconds of its own process for each, more beside other tests.
  it("are what AssemblyScript compiles to now; else run npm run generate", async () => expect(stale(await compiled())).toEqual([]), 90_000);

  it("keep what stands around the words in the reference", () => {
    const text = "# A\n\n<!-- words:begin -->\nwhat stood here before\n<!-- words:end -->\n\n## After\n";
    const once = withWords(text);
    expect(once).toContain(words());
    expect(once).not.toContain("what stood here before");
    expect(once.startsWith("# A\n")).toBe(true);
    expect(once.endsWith("\n\n## After\n")).toBe(true);
    expect(withWords(once)).toBe(once);
    expect(withWords(withWords("# A\n"))).toBe(withWords("# A\n"));
  });
});

describe("highlighting", () => {
  const rules = textmate().patterns;
  const seen = (line: string) => colour(line, rules);

  it("colours a block with its name and properties", () => {
    expect(seen('wing main { at = (165 mm, 0 mm, 58 mm) ; foil = naca("4412") }')).toEqual([
      ["wing", "storage.type"], ["main", "entity.name.type"],
      ["at", "support.type.property-name"], ["=", "keyword.operator"],
      ["165", "constant.numeric"], ["mm", "keyword.other.unit"], ["0", "constant.numeric"], ["mm", "keyword.other.unit"],
      ["58", "constant.numeric"], ["mm", "keyword.other.unit"],
      ["foil", "support.type.property-name"], ["=", "keyword.operator"], ["naca", "support.function"], ['"4412"', "string.quoted.double"],
    ]);
  });

  it("tells a kind from a property and a name of the same word", () => {
    expect(seen("battery pack {")).toEqual([["battery", "storage.type"], ["pack", "entity.name.type"]]);
    expect(seen("battery = pack")).toEqual([["battery", "support.type.property-name"], ["=", "keyword.operator"]]);
    expect(seen("motor { kv = 780 rpm/V }").slice(0, 2)).toEqual([["motor", "storage.type"], ["kv", "support.type.property-name"]]);
    expect(seen('airframe "Plover" {')).toEqual([["airframe", "storage.type"], ['"Plover"', "string.quoted.double"]]);
    expect(seen("place pods from pod {")).toEqual([["place", "storage.type"], ["pods", "entity.name.type"], ["from", "keyword.control"]]);
    expect(seen("panel from main.outer {")).toEqual([
      ["panel", "storage.type"], ["from", "keyword.control"], ["main.outer", "variable.other.member"],
    ]);
  });

  it("reads a unit only after a number", () => {
    expect(seen("panel in { span = 12 in }")).toEqual([
      ["panel", "storage.type"], ["in", "entity.name.type"], ["span", "support.type.property-name"], ["=", "keyword.operator"],
      ["12", "constant.numeric"], ["in", "keyword.other.unit"],
    ]);
    expect(seen("speed = 60 deg/0.12 s").slice(2)).toEqual([
      ["60", "constant.numeric"], ["deg", "keyword.other.unit"], ["/", "keyword.operator"], ["0.12", "constant.numeric"], ["s", "keyword.other.unit"],
    ]);
    expect(seen("density = 0.72 g/cm^3 ± 8 %").slice(2)).toEqual([
      ["0.72", "constant.numeric"], ["g/cm^3", "keyword.other.unit"], ["±", "keyword.operator"], ["8", "constant.numeric"], ["%", "keyword.other.unit"],
    ]);
    expect(seen("a = 12 inner")).toEqual([["=", "keyword.operator"], ["12", "constant.numeric"]]);
  });

  it("colours statements, words, figures, functions and comments", () => {
    expect(seen('require abs(ferry.cg.x - survey.cg.x) < 4 mm because "why" # note')).toEqual([
      ["require", "keyword.control"], ["abs", "support.function"], ["ferry.cg.x", "variable.other.member"], ["-", "keyword.operator"],
      ["survey.cg.x", "variable.other.member"], ["<", "keyword.operator"], ["4", "constant.numeric"], ["mm", "keyword.other.unit"],
      ["because", "keyword.control"], ['"why"', "string.quoted.double"], ["# note", "comment.line.number-sign"],
    ]);
    expect(seen("let tail_arm = 610 mm")[1]).toEqual(["tail_arm", "variable.other.constant"]);
    expect(seen('waive tip_stall_first because "a # b"')).toEqual([
      ["waive", "keyword.control"], ["tip_stall_first", "entity.name.tag"], ["because", "keyword.control"], ['"a # b"', "string.quoted.double"],
    ]);
    expect(seen("rotation = clockwise ; mirror = yes")).toEqual([
      ["rotation", "support.type.property-name"], ["=", "keyword.operator"], ["clockwise", "constant.language"],
      ["mirror", "support.type.property-name"], ["=", "keyword.operator"], ["yes", "constant.language"],
    ]);
  });

  it("leaves a property it doesn't know uncoloured", () => expect(seen("spann = 1 mm")[0]).toEqual(["=", "keyword.operator"]));
});

/** The text a snippet inserts when every stop is left as offered. */
function inserted(body: readonly string[]): string {
  return body.join("\n")
    .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, "$1")
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, (_, text: string) => text.replace(/\\(.)/g, "$1"))
    .replace(/\$0/g, "");
}

describe("snippets", () => {
  it("has one for every kind", () => expect(Object.keys(snippets())).toEqual(expect.arrayContaining(Object.keys(kinds))));

  it.each(Object.entries(snippets()))("%s inserts text that parses", (_, { body }) => expect(parse(inserted(body)).issues).toEqual([]));

  it.each(Object.entries(snippets()))("%s counts its stops from 1 in the order of the text", (_, { body }) => {
    const stops = [...body.join("\n").matchAll(/\$\{(\d+)[:|]/g)].map(([, n]) => Number(n));
    expect(stops).toEqual(stops.map((_stop, i) => i + 1));
  });
});

describe("language configuration", () => {
  const config = JSON.parse(readFileSync(new URL("../../grammar/language-configuration.json", import.meta.url), "utf8")) as {
    indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
    onEnterRules: readonly { beforeText: { pattern: string }; afterText?: { pattern: string } }[];
  };
  const increase = new RegExp(config.indentationRules.increaseIndentPattern);

  it.each(["wing main {", '  foil = naca("{") ; panel inner {', "outputs = [", "wing main { # note"])("indents after %s", (line) => {
    expect(increase.test(line)).toBe(true);
  });

  it.each(["panel inner { span = 420 mm }", "# wing main {", 'purpose = "{"', "at = (1 mm, 2 mm, 3 mm)"])("not after %s", (line) => {
    expect(increase.test(line)).toBe(false);
  });

  it("puts the cursor between braces on a line of its own", () => {
    const [rule] = config.onEnterRules;
    expect(new RegExp(rule.beforeText.pattern).test("wing main {")).toBe(true);
    expect(new RegExp(rule.beforeText.pattern).test("# wing main {")).toBe(false);
    expect(new RegExp(rule.afterText!.pattern).test("}")).toBe(true);
  });

  it("has patterns that compile", () => {
    for (const { beforeText, afterText } of config.onEnterRules) {
      expect(() => [new RegExp(beforeText.pattern), new RegExp(afterText?.pattern ?? "")]).not.toThrow();
    }
  });
});
