import { afterEach, describe, expect, it } from "vitest";
import type { Finding } from "../../../shared/finding";
import { analyseText, figureOf } from "../../service";
import { singleText } from "../figures/singles";
import { twinText } from "../figures/twins";
import { applied } from "./edits";

const found = (text: string): Finding[] => analyseText(text).findings.filter(({ code }) => code === "thrust_line_unbalanced");

afterEach(() => new Promise<void>((resolve) => setImmediate(resolve)));

describe("thrust_line_unbalanced by moments", () => {
  it("a strong single straight ahead: the hint says how much rudder the climb takes, and its fix takes it away", () => {
    for (const [rotation, side, sign] of [["clockwise", "right", ""], ["anticlockwise", "left", "-"]] as const) {
      const text = singleText({ rotation });
      const [hint] = found(text);
      expect(hint.severity).toBe("hint");
      expect(hint.message).toMatch(new RegExp(`the climb takes [\\d.]+ deg of ${side} rudder, [\\d.]+ deg of ${side} thrust would need none`));
      expect(hint.fixes![0].title).toBe(`Write right_thrust = ${sign}4 deg`);
      const after = applied(text, hint.fixes![0]);
      expect(found(after)).toEqual([]);
      expect(Math.abs(figureOf(analyseText(after), "trim.climb.rudder")!)).toBeLessThan(0.6 * Math.abs(figureOf(analyseText(text), "trim.climb.rudder")!));
    }
  });
  it("writes what is solved where that is usual", () => {
    // A fin half out of the slipstream: the propeller sits lower.
    const text = singleText().replace("at = (-250 mm, 0 mm, 0 mm)", "at = (-250 mm, 0 mm, -50 mm)");
    const solved = (figureOf(analyseText(text), "trim.climb.right_thrust")! * 180) / Math.PI;
    expect(solved).toBeLessThan(4);
    const [hint] = found(text);
    expect(hint.fixes![0].title).toBe(`Write right_thrust = ${Number(solved.toFixed(1))} deg`);
    const after = applied(text, hint.fixes![0]);
    expect(found(after)).toEqual([]);
    // Written to a tenth of a degree.
    expect(Math.abs(figureOf(analyseText(after), "trim.climb.rudder")!)).toBeLessThan(0.05 * Math.abs(figureOf(analyseText(text), "trim.climb.rudder")!));
  });
  it("much rudder, though it has side thrust; none or a warning by what the rudder has", () => {
    const text = (rudder: number) => singleText({ head: "right_thrust = 1 deg", rudder });
    expect(found(text(25))).toEqual([]);
    const [hint] = found(text(5));
    expect(hint.severity).toBe("hint");
    expect(hint.message).toMatch(/of right rudder, \d\d % of its throw; a sport model should need at most 30 %/);
    expect(found(applied(text(5), hint.fixes![0]))).toEqual([]);
    const [warning] = found(text(1));
    expect(warning.severity).toBe("warning");
    expect(warning.message).toContain("more than there is");
    expect(warning.fixes).toBeUndefined();
  });
  it("a pair whose propellers differ, though its shafts match", () => {
    const [warning] = found(twinText().replace("diameter = 7 in", "diameter = 6.5 in"));
    expect(warning.severity).toBe("warning");
    expect(warning.message).toContain("turn against each other but don't match");
    expect(warning.message).toContain("of left rudder");
    for (const turning of ["inboard", "outboard"] as const) expect(found(twinText({ turning }))).toEqual([]);
  });
  it("a pair that turns alike only where it takes much of the rudder", () => {
    expect(found(twinText({ turning: "clockwise" }))).toEqual([]);
    expect(found(twinText({ turning: "clockwise", rudder: 3 }))[0].message).toContain("all motors together");
  });
  it("limits move it", () => {
    expect(found(singleText({ head: "right_thrust = 1 deg", rudder: 5, more: "limits { thrust_line_unbalanced.rudder = 60 % }" }))).toEqual([]);
    expect(found(singleText({ head: "right_thrust = 1 deg", more: "limits { thrust_line_unbalanced.rudder = 4 % }" }))[0].message).toContain("limits asks for at most 4 %");
  });
});
