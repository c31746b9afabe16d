import { describe, expect, it } from "vitest";
import type { Finding } from "../../../shared/finding";
import { analyseText, figureOf } from "../../service";
import { applied } from "./edits";

const found = (text: string, code: string): Finding[] => analyseText(text).findings.filter((finding) => finding.code === code);
const at = (text: string, { place }: Finding) => text.slice(place.start, place.end);

const pod = "body pod { at = (-100 mm, 0 mm, 0 mm) ; length = 320 mm ; width = 50 mm ; weight = 40 g }\n";
const pack = (x: number) => `battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (${x} mm, 0 mm, 0 mm) }\n`;

describe("tip_stall_first", () => {
  const swept = (panel: string, kind = "sport") => `airframe { class = ${kind} }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 220 mm to 80 mm ; sweep = 22 deg ${panel} } }
${pod}${pack(60)}`;

  it("is a warning for those who learn and a hint for others", () => {
    expect(["trainer", "sport", "camera", "tailless"].map((kind) => found(swept("", kind), "tip_stall_first")[0].severity)).toEqual(["warning", "warning", "hint", "hint"]);
  });

  it.each([
    ["", /washout = 1.5 deg ;/],
    ["; washout = 0.2 deg", /washout = 1.7 deg/],
    ["; twist = 1 deg to 1 deg", /twist = 1 deg to -0.5 deg/],
    ["; twist = 1 deg", /twist = 1 deg to -0.5 deg/],
  ])("adds the least washout that moves it in, the way it is written (%s)", (panel, written) => {
    const [finding] = found(swept(panel), "tip_stall_first");
    const after = applied(swept(panel), finding.fixes![0]);
    expect(after).toMatch(written);
    expect(figureOf(analyseText(after), "aero.stall_station")).toBeLessThanOrEqual(0.75);
  });

  it("offers none where the twist is worked out, and keeps still under an aspect ratio of 3", () => {
    const worked = `let tip = 0 deg\n${swept("; twist = 0 deg to tip")}`;
    const [finding] = found(worked, "tip_stall_first");
    expect([at(worked, finding), finding.fixes]).toEqual(["0 deg to tip", undefined]);
    expect(found(swept("").replace("span = 500 mm", "span = 220 mm"), "tip_stall_first")).toEqual([]);
    expect(found(`${swept("")}limits { tip_stall_first = 80 % }`, "tip_stall_first")).toEqual([]);
  });
});
