import { describe, expect, it } from "vitest";
import { analyseStill, figureOf } from "../../service";
import { expectNear } from "../../published/near";

const rpm = Math.PI / 30;
const design = ({ kv = "1100 rpm/V", resistance = "60 mohm", runs = "", more = "" } = {}) => `airframe "Sparrow" { class = sport }
battery pack { cells = 3 ; capacity = 2200 mAh ; c_rating = 30 ; weight = 180 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-100 mm, 0 mm, 0 mm) ; battery = pack ; right_thrust = 2 deg
  motor { kv = ${kv} ; resistance = ${resistance} ; no_load_current = 0.9 A ; max_current = 40 A ; weight = 75 g }
  propeller { diameter = 9 in ; pitch = 5.5 in ; weight = 18 g }
  esc { max_current = 50 A ; weight = 36 g }
  ${runs}
}
${more}`;

/** What the powerplant does at 11 V and 70 % throttle, and at 10.5 V and full, by its own figures over runs of 1. */
function runOf(kv: string, resistance?: string): string {
  const asked = [["full", "100 %", "10.5 V"], ["part", "70 %", "11 V"]] as const;
  const runs = asked.map(([name, throttle, volts]) => `bench ${name} { throttle = ${throttle} ; volts = ${volts} ; amps = 20 A ; rpm = 10000 rpm ; thrust = 10 N }`);
  const analysis = analyseStill(design({ kv, resistance, runs: runs.join("\n") }));
  const of = (name: string, figure: string) => figureOf(analysis, `power.nose.${name}.bench_${figure}`)!;
  return asked.map(([name, throttle, volts]) => `bench ${name} { throttle = ${throttle} ; volts = ${volts} ; amps = ${(20 * of(name, "amps")).toFixed(4)} A ; ` +
    `rpm = ${(1e4 * of(name, "rpm")).toFixed(2)} rpm ; thrust = ${(10 * of(name, "thrust")).toFixed(4)} N ; calibrate = no }`).join("\n");
}

describe("runs on the stand", () => {
  it("stand beside what is computed, with an account and the band of both", () => {
    const analysis = analyseStill(design({ kv: "1100 rpm/V ± 5 %", runs: "bench { volts = 11 V ; rpm = 10200 rpm ± 100 rpm ; amps = 22 A }" }));
    const set = analysis.set("");
    const ratio = set.get("power.nose.bench.bench_rpm")!;
    expect(Math.abs(ratio.quantity.value - 1)).toBeLessThan(0.05);
    expect(ratio.quantity.spread!.size).toBe(2);
    expect(ratio.account.inputs.find(({ name }) => name === "measured")!.value).toMatchObject({ value: 10200 * rpm });
    expect(set.get("power.nose.bench.bench_thrust")).toBeUndefined();
    expect(analysis.findings).toEqual([]);
  });

  it("say why a figure of theirs is not there", () => {
    const asked = (figure: string, runs: string) => analyseStill(design({ runs, more: `require power.${figure} > 0.9` })).findings.map(({ message }) => message);
    const full = "bench full { volts = 11 V ; rpm = 10200 rpm }";
    expect(asked("nose.full.bench_thrust", full)).toEqual([expect.stringContaining("nose.full has no thrust")]);
    expect(asked("nose.half.bench_rpm", full)).toEqual([expect.stringContaining("no run on the stand has that name; there are nose.full")]);
    expect(asked("nose.full.bench_rpm", "")).toEqual([expect.stringContaining("no powerplant has a bench run")]);
    expect(asked("nose.full.bench_rpm", full)).toEqual([]);
  });

  it("of mirrored powerplants count for each, and are told of once", () => {
    const analysis = analyseStill(design({ runs: "bench full { volts = 11 V ; rpm = 9000 rpm }" }).replace("nose {", "nose { mirror = yes ;").replace("(-100 mm, 0 mm", "(-100 mm, 200 mm"));
    expect(figureOf(analysis, "power.nose.left.full.bench_rpm")).toBe(figureOf(analysis, "power.nose.right.full.bench_rpm"));
    expect(analysis.findings.filter(({ code }) => code === "bench_differs")).toHaveLength(1);
  });

  it("by which a motor is calibrated move its input for all power figures, and say so", () => {
    const runs = runOf("1000 rpm/V").replaceAll("calibrate = no", "calibrate = yes");
    const analysis = analyseStill(design({ kv: "1100 rpm/V ± 2 %", runs }));
    const truth = analyseStill(design({ kv: "1000 rpm/V ± 2 %" }));
    for (const name of ["power.static_thrust", "power.static_current", "power.nose.static_rpm", "power.current_margin"]) {
      expectNear(figureOf(analysis, name)!, figureOf(truth, name)!, 2e-3); // the search ends within 1e-4 in kv, thrust goes with its square
      // The written ± goes along in proportion.
      expect(analysis.set("").value(name)!.spread!.size).toBe(1);
    }
    const inputs = analysis.set("").get("power.static_thrust")!.account.inputs;
    const [moved, written] = inputs.filter(({ name }) => name.startsWith("nose.motor.kv"));
    expect([moved.name, written.name]).toEqual(["nose.motor.kv, calibrated by nose.full, nose.part", "nose.motor.kv as written"]);
    expectNear((moved.value as { value: number }).value / rpm, 1000, 1e-3);
    expectNear((written.value as { value: number }).value / rpm, 1100, 1e-9);
    const [hint, ...others] = analysis.findings;
    expect(others).toEqual([]);
    expect(hint).toMatchObject({ code: "bench_differs", severity: "hint" });
    expect(hint.message).toMatch(/^nose is computed with a kv of 1000 rpm\/V instead of 1100 rpm\/V \(−9\.1 %\), as nose\.full and nose\.part show/);
    expect(hint.fixes![0].edits[0].text).toMatch(/^(1000(\.\d)?|999\.\d) rpm\/V$/);
  });

  it("that are met as they stand move nothing and say nothing", () => {
    const runs = runOf("1100 rpm/V").replaceAll("calibrate = no", "calibrate = yes");
    const analysis = analyseStill(design({ runs }));
    expect(analysis.set("").facts.calibrated).toBeUndefined();
    expect(figureOf(analysis, "power.static_thrust")).toBe(figureOf(analyseStill(design()), "power.static_thrust"));
    expect(analysis.findings).toEqual([]);
  });

  it("that ask for calibration go before those that don't", () => {
    const [full] = runOf("1000 rpm/V").split("\n");
    const analysis = analyseStill(design({ runs: `${full.replace("= no", "= yes")}\nbench odd { volts = 11 V ; rpm = 6000 rpm }` }));
    expect(analysis.set("").facts.bench![0]).toMatchObject({ calibratedBy: ["nose.full"], moved: { input: "motor.kv" } });
    const [finding] = analysis.findings;
    expect(finding).toMatchObject({ code: "bench_differs", severity: "warning", figure: "power.nose.odd.bench_rpm" });
    expect(finding.message).toContain(", even with a kv of ");
  });
});

describe("what is said of runs that differ", () => {
  const warning = (text: string) => analyseStill(text).findings.find(({ code }) => code === "bench_differs");

  it("stands at the value that is farthest off for its kind, and names what would explain it", () => {
    const text = design({ runs: runOf("1000 rpm/V") });
    const found = warning(text)!;
    expect(text.slice(found.place.start, found.place.end)).toMatch(/^\d.* (A|N)$/);
    expect(found.message).toContain("a kv of 1000 rpm/V instead of 1100 rpm/V (−9.1 %)");
    expect(found.fixes![0].title).toMatch(/^Write kv = /);
  });

  it("names a resistance where that is it", () => {
    expect(warning(design({ resistance: "60 mohm", runs: runOf("1100 rpm/V", "150 mohm") }))!.message).toMatch(/: a winding resistance of 1(49|50|51) mohm instead of 60 mohm/);
  });

  it("names none where none does it alone", () => {
    const found = warning(design({ runs: "bench full { volts = 11 V ; amps = 30 A ; rpm = 9000 rpm ; thrust = 0.6 kgf }" }))!;
    expect(found.message).toContain("no single input explains it");
    expect(found.fixes).toBeUndefined();
  });

  it("is silent within the design's own limits, and within the band", () => {
    const runs = "bench full { volts = 11 V ; rpm = 9500 rpm }";
    expect(warning(design({ runs }))).toBeDefined();
    expect(warning(design({ runs, more: "limits { bench_differs.rpm = 15 % }" }))).toBeUndefined();
    expect(warning(design({ runs: runs.replace("9500 rpm", "9500 rpm ± 1500 rpm") }))).toBeUndefined();
    expect(warning(design({ runs, more: 'waive bench_differs because "another propeller was on the stand"' }))).toBeUndefined();
  });

  it("writes into this file only", () => {
    const other = design();
    const text = `use "other.airframe" as other\nbattery pack from other.pack { }\npowerplant nose from other.nose { battery = pack ; bench full { volts = 11 V ; rpm = 9000 rpm ; amps = 15 A } }`;
    const found = analyseStill(text, { "other.airframe": other }).findings.find(({ code }) => code === "bench_differs")!;
    expect(found.fixes).toBeUndefined();
  });
});
