import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { analyseFile, analyseText, root } from "../../service";
import { sound } from "./sound-designs";

const said = (analysis: ReturnType<typeof analyseText>) => analysis.findings.map(({ code, message }) => `${code}: ${message}`);

describe("sound designs draw no finding at all, hints included", () => {
  const inFolder = (folder: string) => readdirSync(join(root, folder)).filter((name) => name.endsWith(".airframe")).map((name) => [folder, name] as const);
  it.each([...inFolder("samples"), ...inFolder("client/templates")])("%s/%s", (folder, name) => {
    expect(said(analyseFile(folder, name))).toEqual([]);
  });
  it.each(Object.keys(sound))("%s", (name) => {
    expect(said(analyseText(sound[name]))).toEqual([]);
  });
});

test("a design that is half written is not judged by its balance", () => {
  const wing = 'wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 90 g ; panel half { span = 400 mm ; chord = 200 mm } }\n';
  expect(said(analyseText(wing))).toEqual([]);
  const more = `${wing}battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 110 g ; at = (150 mm, 40 mm, 0 mm) }\n`;
  expect(analyseText(more).findings.map(({ code }) => code).sort()).toEqual(["cg_aft_of_limit", "cg_off_centre"]);
  expect(analyseText(`${more}servo ele { at = (0 mm, 0 mm, 0 mm) }`).findings.map(({ code }) => code)).toEqual(["weight_missing"]);
  const waived = `${more}servo ele { at = (0 mm, 0 mm, 0 mm) ; waive weight_missing because "weighed with the wing" }`;
  expect(analyseText(waived).findings.map(({ code }) => code).sort()).toEqual(["cg_aft_of_limit", "cg_off_centre"]);
});
