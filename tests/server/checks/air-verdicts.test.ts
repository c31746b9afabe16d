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

describe("canard_stalls_last", () => {
  const canard = (packX: number, front = "") => `canard front { at = (0 mm, 0 mm, 20 mm) ; foil = naca("4412") ; ${front} weight = 30 g ; panel half { span = 260 mm ; chord = 120 mm } }
wing main { at = (400 mm, 0 mm, 0 mm) ; foil = naca("0009") ; weight = 110 g ; panel half { span = 450 mm ; chord = 200 mm } }
body pod { at = (0 mm, 0 mm, 0 mm) ; length = 560 mm ; width = 50 mm ; weight = 60 g }
${pack(packX)}`;

  it("compares the limits of canard and wing, and leaves a balance point too far aft to its own message", () => {
    const [finding] = found(canard(225), "canard_stalls_last");
    expect([finding.severity, at(canard(225), finding)]).toEqual(["error", "front"]);
    const limits = analyseText(canard(225)).sets[0].facts.flight!.points.stall.limits;
    expect(limits.map(({ kind }) => kind)).toEqual(["wing", "canard"]);
    expect(found(canard(225, "incidence = 4 deg ;"), "canard_stalls_last")).toEqual([]);
    expect(analyseText(canard(290)).findings.map(({ code }) => code)).toEqual(["cg_aft_of_limit"]);
  });
});

describe("cg_forward_of_limit by the power of the elevator", () => {
  const weak = (packX: number, more = "", throwUp = 5) => `airframe { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ; dihedral = 4 deg } }
tailplane stab {
  at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 14 g ; panel half { span = 180 mm ; chord = 110 mm }
  elevator flap { along = 0 % to 100 % ; chord = 20 % ; up = ${throwUp} deg ; down = 10 deg }
}
fin upright { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = 130 mm ; chord = 110 mm } }
body hull { at = (-120 mm, 0 mm, 0 mm) ; length = 760 mm ; width = 50 mm ; weight = 60 g }
${pack(packX)}${more}`;

  it("is a warning that says by how much and which rule, and the fix goes 3 % of the chord behind it", () => {
    const [finding, ...more] = found(weak(-64), "cg_forward_of_limit");
    expect([finding.severity, more.length, at(weak(-64), finding)]).toEqual(["warning", 0, "(-64 mm, 0 mm, 0 mm)"]);
    expect(finding.message).toMatch(/^balance point [\d.]+ mm ahead of the forward limit: full nose-up throw can't hold the nose up down to the stall; move pack/);
    const after = analyseText(applied(weak(-64), finding.fixes![0]));
    const behind = figureOf(after, "cg.x")! - figureOf(after, "stability.cg_forward")!;
    // 6 mm, to what half a millimetre of the pack moves the whole by; or as near as the aft limit lets it.
    expect(behind).toBeGreaterThan(0.004);
    expect(behind).toBeLessThan(0.0065);
    expect(after.findings.map(({ code }) => code)).not.toContain("cg_aft_of_limit");
  });

  it("goes before the margin: one finding a loading", () => {
    const loaded = weak(-115, "item bag { weight = 60 g ; at = (-100 mm, 0 mm, 0 mm) }\nloading light { without = [bag] }\nloading full { }\n", 4);
    const all = found(loaded, "cg_forward_of_limit");
    expect(all.map(({ severity }) => severity)).toEqual(["warning"]);
    expect(all[0].message).toContain("in full (also in light)");
    expect(figureOf(analyseText(loaded), "stability.static_margin", "full")).toBeGreaterThan(0.25);
  });

  it("looks at the nose wheel too", () => {
    const gear = "gear legs { wheel nose { at = (-60 mm, 0 mm, -120 mm) ; weight = 10 g } ; wheel main { at = (260 mm, 100 mm, -120 mm) ; mirror = yes ; weight = 15 g } }\n";
    const [finding] = found(weak(-30, gear, 15), "cg_forward_of_limit");
    expect(finding.message).toContain("can't lift the nose wheel at 1.1 × stall speed");
  });

  it("has no place to offer where the elevator is too weak for any", () => {
    const [finding] = found(weak(-64, "", 1), "cg_forward_of_limit");
    expect(finding.message).toContain("no balance point is right for both limits: give stab.flap more throw or area");
    expect(finding.fixes).toBeUndefined();
  });

  it("bounds what moving the pack forward may do", () => {
    const [finding] = found(weak(-20), "cg_aft_of_limit");
    const after = analyseText(applied(weak(-20), finding.fixes![0]));
    expect(after.findings).toEqual([]);
  });
});

describe("trim_out_of_throw", () => {
  const tailed = (incidence: string, throws: string, packX = -60, more = "") => `airframe { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ; dihedral = 5 deg } }
tailplane stab { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; ${incidence} weight = 14 g ; panel half { span = 180 mm ; chord = 110 mm } ; elevator flap { along = 0 % to 100 % ; chord = 30 % ; ${throws} } }
fin upright { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = 130 mm ; chord = 110 mm } }
body hull { at = (-120 mm, 0 mm, 0 mm) ; length = 760 mm ; width = 50 mm ; weight = 60 g }
${pack(packX)}${more}`;
  const nose = "incidence = -7 deg ;";

  it("is an error past the throw, a warning near its end, and nothing with enough left", () => {
    const severity = (degrees: number) => found(tailed(nose, `up = ${degrees} deg ; down = ${degrees} deg`), "trim_out_of_throw").map((f) => f.severity);
    // It takes 8.1 degrees: 10.8 leave a quarter.
    expect([severity(7.5), severity(8.5), severity(10.5), severity(11.2)]).toEqual([["error"], ["warning"], ["warning"], []]);
  });

  it("sets the tailplane so that the elevator is level, to half a degree of it", () => {
    for (const text of [tailed(nose, "up = 8 deg ; down = 8 deg"), tailed("", "up = 8 deg ; down = 8 deg").replace('naca("2412") ;', 'naca("2412") ; incidence = 7 deg ;')]) {
      const [finding] = found(text, "trim_out_of_throw");
      const after = analyseText(applied(text, finding.fixes![0]));
      expect(after.findings).toEqual([]);
      // Half a step of incidence, 0.25°, is 0.5° of an elevator that has about half its effect.
      expect(Math.abs(figureOf(after, "trim.stab.flap")!)).toBeLessThan((0.5 * Math.PI) / 180);
    }
  });

  it("suits all loadings or is not offered, nor where the incidence is worked out", () => {
    const two = tailed(nose, "up = 8 deg ; down = 8 deg", -60, "item bag { weight = 30 g ; at = (40 mm, 0 mm, 0 mm) }\nloading light { without = [bag] }\nloading full { }\n");
    expect(analyseText(applied(two, found(two, "trim_out_of_throw")[0].fixes![0])).findings).toEqual([]);
    // With the cruise given; else its speed moves a little as the tail drags less.
    const fast = two.replace("class = sport", "class = sport ; cruise = 7.3 m/s");
    const after = analyseText(applied(fast, found(fast, "trim_out_of_throw")[0].fixes![0]));
    const [light, full] = ["light", "full"].map((loading) => figureOf(after, "trim.stab.flap", loading)!);
    expect(light).not.toBeCloseTo(full, 3);
    expect(Math.abs(light + full) / 2).toBeLessThan((0.5 * Math.PI) / 180);
    const worked = `let rig = -7 deg\n${tailed("incidence = rig ;", "up = 8 deg ; down = 8 deg")}`;
    const [finding] = found(worked, "trim_out_of_throw");
    expect([at(worked, finding), finding.fixes]).toEqual(["rig", undefined]);
  });

  it("leaves a balance point out of its limits to that message", () => {
    const text = tailed(nose, "up = 8 deg ; down = 8 deg", -20);
    expect(found(text, "cg_aft_of_limit")).toHaveLength(1);
    expect(found(text, "trim_out_of_throw")).toEqual([]);
  });
});

describe("mode_divergent and mode_undamped", () => {
  const model = (panel: string, fin: string, kind = "sport", more = "") => `airframe { class = ${kind} }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ${panel} } }
tailplane stab { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 14 g ; panel half { span = 180 mm ; chord = 110 mm } }
${fin}body hull { at = (-120 mm, 0 mm, 0 mm) ; length = 760 mm ; width = 50 mm ; weight = 60 g }
${pack(-60)}${more}`;
  const fin = "fin upright { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = 150 mm ; chord = 120 mm } }\n";
  const both = (text: string) => [...found(text, "mode_divergent"), ...found(text, "mode_undamped")];

  it("tells of a spiral at the wing, by the class and the design's own limit", () => {
    const [finding, ...more] = both(model("", fin));
    expect([more.length, finding.severity, at(model("", fin), finding), finding.figure]).toEqual([0, "warning", "main", "modes.spiral.doubling_time"]);
    expect(both(model("", fin, "aerobatic"))).toEqual([]);
    const time = figureOf(analyseText(model("", fin)), "modes.spiral.doubling_time")!;
    expect(both(model("", fin, "sport", `limits { mode_divergent.spiral = ${time - 0.01} s }`))).toEqual([]);
    expect(both(model("", fin, "aerobatic", `limits { mode_divergent.spiral = ${time + 0.01} s }`))).toHaveLength(1);
  });

  it("judges no swing without a fin, and none that can't be: nothing of half a design", () => {
    expect(analyseText(model("", "")).findings.map(({ code }) => code)).toEqual(["fin_volume_low"]);
    expect(both(model("", fin, "sport", "servo ele { at = (0 mm, 0 mm, 0 mm) }"))).toEqual([]);
  });

  it("judges no motion in pitch behind the neutral point", () => {
    const tail = model("; dihedral = 5 deg", fin).replace("(-60 mm", "(40 mm");
    const analysis = analyseText(tail);
    expect(figureOf(analysis, "stability.static_margin")).toBeLessThan(0);
    expect(analysis.findings.map(({ code }) => code)).toEqual(["cg_aft_of_limit"]);
  });

  it("tells of a phugoid that doubles within 15 s", () => {
    const plank = `airframe { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm } }
boom keel { at = (-500 mm, 0 mm, 0 mm) ; length = 1100 mm ; width = 15 mm ; weight = 60 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (-480 mm, 0 mm, 0 mm) }
item lead { weight = 170 g ; at = (520 mm, 0 mm, 0 mm) }`;
    const [finding] = both(plank);
    expect([finding.severity, at(plank, finding), finding.figure]).toEqual(["warning", "airframe", "modes.phugoid.damping"]);
    const analysis = analyseText(plank);
    const [damping, frequency] = ["damping", "frequency"].map((name) => figureOf(analysis, `modes.phugoid.${name}`)!);
    expect(Number(/doubles in ([\d.]+) s/.exec(finding.message)![1])).toBeCloseTo(Math.LN2 / -(damping * frequency), 2);
  });

  it("tells of a Dutch roll that hardly dies at the fin, and of one that grows once", () => {
    const wag = (dihedral: number, span: number, lead: number) => `airframe { class = glider }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ; dihedral = ${dihedral} deg } }
tailplane stab { at = (400 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 14 g ; panel half { span = 200 mm ; chord = 130 mm } }
fin upright { at = (400 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = ${span} mm ; chord = 120 mm } }
boom keel { at = (-300 mm, 0 mm, 0 mm) ; length = 820 mm ; width = 15 mm ; weight = 60 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (-260 mm, 0 mm, 0 mm) }
item lead { weight = ${lead} g ; at = (500 mm, 0 mm, 0 mm) }`;
    const [finding, ...more] = both(wag(18, 88, 110));
    expect([more.length, finding.code, at(wag(18, 88, 110), finding)]).toEqual([0, "mode_undamped", "upright"]);
    const worse = `${wag(24, 92, 110)}\nlimits { yaw_unstable = 0.001 /rad }`;
    expect(figureOf(analyseText(worse), "modes.dutch_roll.damping")).toBeLessThan(0);
    expect(both(worse).map((f) => [f.code, at(worse, f), f.figure])).toEqual([["mode_divergent", "upright", "modes.dutch_roll.damping"]]);
  });
});

describe("low_reynolds", () => {
  const light = (foil: string, chord = 160, more = "") => `airframe { class = slow }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = ${foil} ; weight = 30 g ; panel half { span = 350 mm ; chord = ${chord} mm } }
body hull { at = (-80 mm, 0 mm, 0 mm) ; length = 260 mm ; width = 40 mm ; weight = 20 g }
battery pack { cells = 2 ; capacity = 450 mAh ; weight = 30 g ; at = (-45 mm, 0 mm, 0 mm) }
${more}`;

  it("hints at the section, where it is thick without its camber", () => {
    const thick = light('naca("2412")');
    expect(found(thick, "low_reynolds").map((f) => [f.severity, at(thick, f)])).toEqual([["hint", 'naca("2412")']]);
    expect(found(light("flat(4 %)"), "low_reynolds")).toEqual([]);
    expect(found(light("flat(9 %)"), "low_reynolds")).toHaveLength(1);
  });

  it("keeps still over what is fast enough, half written or said to be well", () => {
    const reynolds = figureOf(analyseText(light('naca("2412")')), "wing.reynolds_stall")!;
    expect(found(light('naca("2412")', 160, `limits { low_reynolds = ${Math.floor(reynolds)} }`), "low_reynolds")).toEqual([]);
    expect(found(light('naca("2412")', 160, "limits { low_reynolds.thickness = 13 % }"), "low_reynolds")).toEqual([]);
    expect(found(light('naca("2412")', 160, "servo ele { at = (0 mm, 0 mm, 0 mm) }"), "low_reynolds")).toEqual([]);
  });
});

describe("cg_moves", () => {
  const two = (throwUp: number, more = "") => `airframe { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ; dihedral = 4 deg } }
tailplane stab {
  at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 14 g ; panel half { span = 180 mm ; chord = 110 mm }
  elevator flap { along = 0 % to 100 % ; chord = 30 % ; up = ${throwUp} deg ; down = 12 deg }
}
fin upright { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = 130 mm ; chord = 110 mm } }
body hull { at = (-120 mm, 0 mm, 0 mm) ; length = 760 mm ; width = 50 mm ; weight = 60 g }
${pack(-60)}item bag { weight = 60 g ; at = (-80 mm, 0 mm, 0 mm) }
loading empty { without = [bag] }
loading full { }
${more}`;

  it("goes by the range between the limits of the balance point", () => {
    const wide = two(15);
    expect(analyseText(wide).findings).toEqual([]);
    // With less throw the forward limit comes nearer: the same move no longer fits between it and the aft limit.
    const [finding] = found(two(5), "cg_moves");
    const set = analyseText(two(5)).set("full");
    const range = (set.value("stability.cg_aft")!.value - set.value("stability.cg_forward")!.value) / set.value("wing.mean_chord")!.value;
    expect(range).toBeLessThan(0.12);
    expect(Number(/from its forward to its aft limit are ([\d.]+) %/.exec(finding.message)![1])).toBeCloseTo(100 * range, 0);
  });

  it("goes by the design's own limit before that", () => {
    expect(found(two(5, "limits { cg_moves = 20.5 % }"), "cg_moves")).toEqual([]);
    expect(found(two(15, "limits { cg_moves = 5 % }"), "cg_moves")[0].message).toContain("limits asks for 5 %");
  });
});

describe("flap_trim", () => {
  const flapped = (down: number, elevator: string, more = "") => `airframe { class = sport }
wing main {
  at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 110 g ; panel half { span = 500 mm ; chord = 200 mm ; dihedral = 5 deg }
  flap brake { along = 5 % to 60 % ; chord = 25 % ; ${down ? `down = ${down} deg` : ""} }
}
tailplane stab {
  at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; incidence = -1.5 deg ; weight = 14 g ; panel half { span = 180 mm ; chord = 110 mm }
  elevator full { along = 0 % to 100 % ; chord = 30 % ; ${elevator} }
}
fin upright { at = (560 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 6 g ; panel only { span = 130 mm ; chord = 110 mm } }
body hull { at = (-120 mm, 0 mm, 0 mm) ; length = 760 mm ; width = 50 mm ; weight = 60 g }
${pack(-60)}${more}`;

  it("weighs the change against the throw the way it goes, at the flap", () => {
    const short = flapped(40, "up = 24 deg ; down = 12 deg");
    const change = (figureOf(analyseText(short), "trim.flap_change")! * 180) / Math.PI;
    const [finding, ...more] = found(short, "flap_trim");
    expect([more.length, finding.severity, at(short, finding)]).toEqual([0, "warning", "brake"]);
    expect(finding.message).toContain(`full goes ${change.toFixed(1)} deg down against that, ${Math.round((100 * change) / 12)} % of its throw`);
    expect(found(flapped(40, `up = 12 deg ; down = ${2 * change + 0.1} deg`), "flap_trim")).toEqual([]);
    expect(found(flapped(40, `up = 12 deg ; down = ${2 * change - 0.1} deg`), "flap_trim")).toHaveLength(1);
    expect(found(flapped(15, "up = 12 deg ; down = 12 deg"), "flap_trim")).toEqual([]);
  });

  it("is the same whatever flaps a loading has, but for the stall speed it is taken at", () => {
    const two = analyseText(flapped(40, "up = 12 deg ; down = 24 deg", "loading clean { }\nloading landing { flaps = 40 deg }\n"));
    const [clean, landing] = ["clean", "landing"].map((loading) => figureOf(two, "trim.flap_change", loading)!);
    expect(figureOf(two, "flight.stall_speed", "landing")).toBeLessThan(figureOf(two, "flight.stall_speed", "clean")!);
    // Lift and moment are linear in the angle, so that the speed comes in by the small terms of height alone.
    expect(Math.abs(landing / clean - 1)).toBeLessThan(0.02);
  });

  it("keeps still where no flap has a throw", () => {
    expect(figureOf(analyseText(flapped(0, "up = 12 deg ; down = 12 deg")), "trim.flap_change")).toBeUndefined();
  });
});
