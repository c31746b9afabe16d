import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parse";
import { applied, casesOf, render } from "./faulty/cases";

const folder = new URL("faulty/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".txt"));

/** UPDATE=1 writes what is found into the files; the change is reviewed as a diff. */
const update = process.env["UPDATE"] !== undefined;

describe("faulty text", () => {
  for (const name of files) {
    const path = new URL(name, folder);
    const cases = casesOf(readFileSync(path, "utf8"));
    if (update) writeFileSync(path, cases.map(render).join("\n"));
    for (const one of casesOf(readFileSync(path, "utf8"))) {
      it(`${name}: ${one.title}`, () => {
        expect(render(one)).toBe(one.written);
        const { issues } = parse(one.snippet);
        expect(issues).toHaveLength(1);
        const [{ fix }] = issues;
        if (fix) expect(parse(applied(one.snippet, fix.edits)).issues.map((issue) => issue.message)).toEqual([]);
      });
    }
  }

  it("has every mistake the language's text names", () => {
    expect(files.length).toBeGreaterThan(5);
    expect(files.flatMap((name) => casesOf(readFileSync(new URL(name, folder), "utf8"))).length).toBeGreaterThanOrEqual(45);
  });
});
