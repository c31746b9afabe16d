import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { dimensions } from "../../../grammar/units/dimension";
import { displayValue } from "../../../grammar/units/display";
import { limitName } from "../../../server/checks/limits";
import { checks } from "../../../server/checks/registry";
import { textCodes } from "../../../server/model/problems";
import type { AirframeClass } from "../../../server/model/design/design";
import { airframeProperties } from "../../../grammar/vocabulary/whole";
import { analyseFile, analyseText, root } from "../../service";
import { applied, codesOf } from "./edits";

const folders = readdirSync(join(root, "server/checks"), { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
const form = airframeProperties.class.form;
const classes = (form.form === "word" ? form.words : []) as readonly AirframeClass[];

/** The folder in which a check and its page stand side by side. */
function pageOf(code: string): string {
  const name = code.replace(/_/g, "-");
  const found = folders.filter((folder) => existsSync(join(root, "server/checks", folder, `${name}.ts`)));
  expect(found).toHaveLength(1);
  return readFileSync(join(root, "server/checks", found[0], `${name}.md`), "utf8");
}

const examplesOf = (page: string): string[] => [...page.matchAll(/```airframe\n([\s\S]*?)\n```/g)].map(([, text]) => text);

describe.each(checks.map((check) => [check.code, check] as const))("%s", (code, check) => {
  const page = pageOf(code);
  const [bad, good] = examplesOf(page);

  it("fires on its example, and on nothing else in it", () => {
    const findings = analyseText(bad).findings;
    expect(codesOf(findings)).toEqual([code]);
    expect(findings[0].place.end).toBeGreaterThan(findings[0].place.start);
  });

  it("says nothing of the sound one", () => {
    expect(analyseText(good).findings).toEqual([]);
  });

  it("is gone when any of its fixes is made, and nothing is broken by it", () => {
    const [finding] = analyseText(bad).findings;
    for (const fix of finding.fixes ?? []) {
      const after = analyseText(applied(bad, fix)).findings;
      expect(codesOf(after), fix.title).not.toContain(code);
      expect(after.filter(({ severity }) => severity === "error"), fix.title).toEqual([]);
    }
  });

  it("has a page with all it must say", () => {
    expect(page.startsWith(`# ${code}\n`)).toBe(true);
    for (const part of ["When it fires", "Why it matters", "Thresholds", "What is not modelled", "Example"]) expect(page).toContain(`\n## ${part}\n`);
  });

  it("has thresholds with a source, each with its usual values on the page", () => {
    for (const threshold of check.thresholds) {
      expect(threshold.text && threshold.source).toBeTruthy();
      const row = page.split("\n").find((line) => line.startsWith(`| \`${limitName(check, threshold.name)}\` |`));
      expect(row, threshold.name).toBeDefined();
      const style = row!.includes("%") ? "share" : undefined;
      const usual = new Set(classes.flatMap((one) => threshold.usual(one) ?? []));
      expect(usual.size).toBeGreaterThan(0);
      for (const value of usual) {
        expect(value).toBeGreaterThan(0);
        expect(row).toMatch(new RegExp(`[^0-9.]${displayValue(value, dimensions[threshold.dimension], "metric", style).text.replace(/[.^/]/g, "\\$&")}(?![0-9.])`));
      }
    }
  });
});

test("which checks offer a fix", () => {
  const fixed = checks.filter(({ code }) => analyseText(examplesOf(pageOf(code))[0]).findings[0]?.fixes?.length).map(({ code }) => code);
  expect(fixed).toEqual([
    "cg_off_centre", "cg_aft_of_limit", "cg_forward_of_limit", "cg_moves", "tip_stall_first", "trim_out_of_throw", "thrust_margin_low", "current_over_limit",
    "motor_hot", "pack_drained", "bench_differs", "propeller_strikes", "thrust_line_unbalanced", "channel_clash",
  ]);
});

describe("samples/faults", () => {
  const files = readdirSync(join(root, "samples/faults")).filter((name) => name.endsWith(".airframe")).map((name) => name.replace(".airframe", ""));

  it("has a file for every code there is", () => {
    expect(files).toEqual([...checks.map(({ code }) => code), ...textCodes].sort());
  });

  it.each(files)("%s shows exactly that", (code) => {
    const analysis = analyseFile("samples/faults", `${code}.airframe`);
    expect(codesOf(analysis.findings)).toEqual([code]);
    expect(analysis.model.file.parsed.text).toMatch(/^# .+\.\n/);
  });

  it.each(checks.map(({ code }) => code))("%s is the example of its page", (code) => {
    const text = readFileSync(join(root, "samples/faults", `${code}.airframe`), "utf8");
    expect(text.split("\n").slice(1).join("\n").trimEnd()).toBe(examplesOf(pageOf(code))[0]);
  });

  it("text codes' fixes mend what they name", () => {
    for (const code of textCodes) {
      const analysis = analyseFile("samples/faults", `${code}.airframe`);
      const { text } = analysis.model.file.parsed;
      for (const fix of analysis.findings[0].fixes ?? []) {
        // A reason that is still empty, a unit still to be chosen: the fix opens the way, the designer ends it.
        if (code === "waiver_without_reason") continue;
        expect(codesOf(analyseText(applied(text, fix)).findings), `${code}: ${fix.title}`).not.toContain(code);
      }
    }
  });
});
