import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../../shared/finding";
import { analyseText } from "../../service";
import { applied, codesOf } from "./edits";

const wing = 'wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 90 g ; panel half { span = 400 mm ; chord = 200 mm } }';
const pod = "body pod { at = (-100 mm, 0 mm, 0 mm) ; length = 320 mm ; width = 50 mm ; weight = 40 g }";
const base = `${wing}\n${pod}\n`;
const pack = (at: string, weight = "180 g") => `battery pack { cells = 3 ; capacity = 2200 mAh ; weight = ${weight} ; at = ${at} }\n`;

const found = (text: string, code: string): Finding[] => analyseText(text).findings.filter((finding) => finding.code === code);
const margin = (text: string, loading = "") => analyseText(text).set(loading).value("stability.static_margin")!.value;

describe("moving a pack", () => {
  it("keeps the unit, the other axes and the tolerance as written", () => {
    const text = base + pack("(1.6 in ± 3 mm, 2 mm, -5 mm)");
    const [finding] = found(text, "cg_aft_of_limit");
    const after = applied(text, finding.fixes![0]);
    expect(after).toMatch(/at = \(-0\.\d+ in ± 3 mm, 2 mm, -5 mm\)/);
    // The middle of 5 and 15 %, to the millimetre the place is written in: 180 g of 310 g over a chord of 200 mm.
    expect(Math.abs(margin(after) - 0.1)).toBeLessThan((0.5e-3 * 180) / 310 / 0.2 + 1e-9);
  });

  it("aims at the middle of what the class usually has, or over the design's own limit", () => {
    const aims = { trainer: 0.15, aerobatic: 0.05, tailless: 0.055, sport: 0.1 };
    for (const [name, aim] of Object.entries(aims)) {
      const text = `airframe { class = ${name} }\n${base}${pack("(60 mm, 0 mm, 0 mm)")}`;
      expect(Math.abs(margin(applied(text, found(text, "cg_aft_of_limit")[0].fixes![0])) - aim)).toBeLessThan(2e-3);
    }
    const own = `${base}${pack("(60 mm, 0 mm, 0 mm)")}limits { cg_aft_of_limit = 12 % }`;
    expect(found(own, "cg_aft_of_limit")[0].message).toContain("limits asks for 12 %");
    expect(margin(applied(own, found(own, "cg_aft_of_limit")[0].fixes![0]))).toBeCloseTo(0.15, 2);
  });

  it("moves both packs of a placed pair, by the axes of their assembly", () => {
    const text = `${base}assembly side { battery cell { cells = 3 ; capacity = 1300 mAh ; weight = 90 g ; at = (-10 mm, 0 mm, 0 mm) } }
place wings from side { at = (50 mm, 120 mm, 0 mm) ; mirror = yes }`;
    const [finding, ...others] = found(text, "cg_aft_of_limit");
    expect(others).toEqual([]);
    expect(text.slice(finding.place.start, finding.place.end)).toBe("(-10 mm, 0 mm, 0 mm)");
    expect(finding.fixes![0].title).toMatch(/^Move wings\.cell to x = -/);
    expect(Math.abs(margin(applied(text, finding.fixes![0])) - 0.1)).toBeLessThan(2e-3);
  });

  it("is not offered where the place is worked out; a weight in the nose is", () => {
    const text = `let strap = 0 mm\n${base}${pack("(strap + 5 mm, 0 mm, 0 mm)")}`;
    const [finding] = found(text, "cg_aft_of_limit");
    expect(text.slice(finding.place.start, finding.place.end)).toBe("(strap + 5 mm, 0 mm, 0 mm)");
    expect(finding.fixes!.map(({ title }) => title)).toEqual([expect.stringMatching(/^Add \d+ g at the nose$/)]);
    const after = applied(text, finding.fixes![0]);
    // Rounded up to a gram: at or just over the margin aimed at.
    expect(margin(after)).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(margin(after)).toBeLessThan(0.105);
  });

  it("gives the added weight a name that is free", () => {
    const text = `let strap = 5 mm\nitem nose_weight { weight = 5 g ; at = (-90 mm, 0 mm, 0 mm) }\n${base}${pack("(strap, 0 mm, 0 mm)")}`;
    const fix = found(text, "cg_aft_of_limit")[0].fixes![0];
    expect(fix.edits[0].text).toContain("item nose_weight_2 {");
    expect(codesOf(analyseText(applied(text, fix)).findings)).toEqual([]);
  });

  it("puts it on a line of its own, in the line ends of the file", () => {
    const text = `airframe { class = sport } # the whole\r\nlet strap = 5 mm\r\n${base}${pack("(strap, 0 mm, 0 mm)")}`;
    expect(applied(text, found(text, "cg_aft_of_limit")[0].fixes![0])).toMatch(/# the whole\r\n\r\nitem nose_weight \{[^\r\n]*\}\r\nlet strap/);
  });

  it("serves all loadings it is aboard in, and leaves those that carry it elsewhere", () => {
    const text = `${base}${pack("(40 mm, 0 mm, 0 mm)")}item camera { weight = 30 g ; at = (-60 mm, 0 mm, 0 mm) }
loading survey { }
loading ferry { without = [camera] }
loading far { battery pack { at = (-10 mm, 0 mm, 0 mm) } }`;
    const [finding, ...others] = found(text, "cg_aft_of_limit");
    expect(others).toEqual([]);
    expect(finding.message).toContain("in ferry (also in survey)");
    const after = applied(text, finding.fixes![0]);
    expect(found(after, "cg_aft_of_limit")).toEqual([]);
    expect(margin(after, "far")).toBe(margin(text, "far"));
    const elsewhere = text.replace("(40 mm", "(-10 mm").replace("(-10 mm, 0 mm, 0 mm) } }", "(60 mm, 0 mm, 0 mm) } }");
    const [one] = found(elsewhere, "cg_aft_of_limit");
    expect(elsewhere.slice(one.place.start, one.place.end)).toBe("(60 mm, 0 mm, 0 mm)");
    expect(found(applied(elsewhere, one.fixes![0]), "cg_aft_of_limit")).toEqual([]);
  });
});

describe("any fix of a check", () => {
  const millimetres = (min: number, max: number) => fc.integer({ min, max });
  const design = fc.record({
    packX: millimetres(-80, 200), packWeight: fc.integer({ min: 60, max: 400 }), cameraX: millimetres(-90, 200), cameraY: millimetres(-150, 150),
    cameraWeight: fc.integer({ min: 5, max: 200 }), airframe: fc.constantFrom("trainer", "sport", "aerobatic", "glider", "tailless", "camera"),
    hub: millimetres(150, 240), diameter: fc.constantFrom("7 in", "9.5 in", "230 mm", "11 in"), maxCurrent: fc.integer({ min: 5, max: 40 }),
    outputs: fc.constantFrom("[ele]", "[ele, none]", "[rud, ele, tail.esc, rud]", "[none, none, tail.esc]"), unit: fc.constantFrom("mm", "cm"),
  });

  it("takes its finding away and makes none of the same code", { timeout: 120_000 }, async () => {
    let tried = 0;
    await fc.assert(fc.asyncProperty(design, async (d) => {
      const length = (mm: number) => (d.unit === "cm" ? `${mm / 10} cm` : `${mm} mm`);
      const text = `airframe { class = ${d.airframe} }
${base}battery pack { cells = 3 ; capacity = 2200 mAh ; c_rating = 30 ; weight = ${d.packWeight} g ± 3 % ; at = (${length(d.packX)}, 0 mm, 0 mm) }
item camera { weight = ${d.cameraWeight} g ; at = (${length(d.cameraX)}, ${length(d.cameraY)}, 0 mm) }
servo ele { weight = 9 g ; at = (60 mm, 0 mm, 0 mm) }
servo rud { weight = 9 g ; at = (60 mm, 0 mm, 0 mm) }
receiver rx { outputs = ${d.outputs} ; weight = 6 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant tail {
  at = (${length(d.hub)}, 0 mm, 0 mm) ; battery = pack ; pusher = yes
  motor { kv = 900 rpm/V ; resistance = 60 mohm ; no_load_current = 0.9 A ; max_current = ${d.maxCurrent} A ; weight = 60 g }
  propeller { diameter = ${d.diameter} ; pitch = 5 in ; weight = 12 g }
  esc { max_current = 60 A ; weight = 20 g ; at = (0 mm, 0 mm, 0 mm) }
}
loading with_camera { }
loading bare { without = [camera] }`;
      const before = analyseText(text).findings;
      for (const finding of before) for (const fix of finding.fixes ?? []) {
        const same = (all: readonly Finding[]) => all.filter(({ code, severity }) => code === finding.code && severity !== "hint");
        const after = same(analyseText(applied(text, fix)).findings);
        expect(after.length, `${finding.code}: ${fix.title}`).toBeLessThan(Math.max(1, same(before).length));
        tried++;
        await new Promise(setImmediate);
      }
    }), { numRuns: 25, seed: 20261125 });
    expect(tried).toBeGreaterThan(40);
  });
});
