import { describe, expect, it } from "vitest";
import type { Finding } from "../../../shared/finding";
import { analyseText } from "../../service";
import { applied } from "./edits";

const found = (text: string, code: string): Finding[] => analyseText(text).findings.filter((finding) => finding.code === code);
const at = (text: string, { place }: Finding) => text.slice(place.start, place.end);

const wing = 'wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 90 g ; panel half { span = 400 mm ; chord = 200 mm } }\n';
const pack = "battery pack { cells = 3 ; capacity = 2200 mAh ; c_rating = 30 ; weight = 180 g ; at = (0 mm, 0 mm, 0 mm) }\n";
const motor = (more = "") => `motor { kv = 1100 rpm/V ; resistance = 60 mohm ; no_load_current = 0.9 A ; weight = 75 g ${more} }`;
const propeller = (more = "") => `propeller { diameter = 9 in ; pitch = 5 in ; weight = 12 g ${more} }`;
const plant = (head: string, m = motor(), p = propeller(), rest = "") => `powerplant nose { at = (-100 mm, 0 mm, 0 mm) ; battery = pack ; ${head} ; ${m} ; ${p} ; ${rest} }\n`;

describe("weight_missing", () => {
  it("is one hint while nothing weighs anything", () => {
    const text = "airframe { }\nservo a { at = (0 mm, 0 mm, 0 mm) }\nservo b { at = (0 mm, 0 mm, 0 mm) ; mirror = yes }";
    const [hint, ...more] = found(text, "weight_missing");
    expect([hint.severity, more.length, at(text, hint)]).toEqual(["hint", 0, "airframe"]);
    expect(hint.message).toContain("a and b need weights");
  });

  it("names each part once, mirrored or not, and the panel where only that lacks it", () => {
    const text = `servo a { at = (0 mm, 0 mm, 0 mm) ; mirror = yes }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel in_side { span = 200 mm ; chord = 200 mm ; weight = 40 g } ; panel outer { span = 200 mm } }`;
    expect(found(text, "weight_missing").map((f) => [f.severity, at(text, f)])).toEqual([["warning", "a"], ["warning", "outer"]]);
  });

  it("keeps still where a weight is written and broken: that has its own message", () => {
    expect(analyseText("item a { weight = 12 mm ; at = (0 mm, 0 mm, 0 mm) }\nitem b { weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }").findings.map((f) => f.code)).toEqual(["wrong_dimension"]);
  });
});

describe("bands", () => {
  const text = (weight: string) => `airframe { class = trainer }\n${wing}item all_else { weight = ${weight} ; at = (-30 mm, 0 mm, 0 mm) }`;

  it("that reach past a limit from inside give a hint, from outside a clause", () => {
    // The wing of 0.16 m² holds 640 g at 10 kg/m³.
    expect(found(text("540 g ± 5 g"), "loading_high")).toEqual([]);
    const [inside] = found(text("540 g ± 20 g"), "loading_high");
    expect([inside.severity, /its band reaches past the limit/.test(inside.message)]).toEqual(["hint", true]);
    const [outside] = found(text("560 g ± 20 g"), "loading_high");
    expect([outside.severity, /its band reaches across the limit/.test(outside.message)]).toEqual(["warning", true]);
    expect(found(text("600 g ± 5 g"), "loading_high")[0].message).not.toContain("band");
  });
});

describe("current_over_limit", () => {
  const severity = (m: string) => found(pack + plant("right_thrust = 2 deg", motor(m)), "current_over_limit").map((f) => f.severity);

  it("tells the lasting rating from the burst one, and takes 1.2 times the lasting where no burst is rated", () => {
    const amps = Number(/takes ([\d.]+) A/.exec(found(pack + plant("right_thrust = 2 deg", motor("; max_current = 5 A")), "current_over_limit")[0].message)![1]);
    expect(amps).toBeGreaterThan(15);
    expect(severity(`; max_current = ${amps + 1} A`)).toEqual([]);
    expect(severity(`; max_current = ${amps - 1} A`)).toEqual(["warning"]);
    expect(severity(`; max_current = ${amps / 1.25} A`)).toEqual(["error"]);
    expect(severity(`; max_current = ${amps / 2} A ; burst_current = ${amps + 1} A`)).toEqual(["warning"]);
    expect(severity(`; max_current = ${amps / 2} A ; burst_current = ${amps - 1} A`)).toEqual(["error"]);
  });

  it("judges power, controller and pack too, each at its own rating", () => {
    const text = pack.replace("c_rating = 30", "c_rating = 5") + plant("right_thrust = 2 deg", motor("; max_power = 60 W"), propeller(), "esc { max_current = 12 A ; weight = 20 g }");
    expect(found(text, "current_over_limit").map((f) => at(text, f)).sort()).toEqual(["12 A", "5", "60 W"]);
  });

  it("names a mirrored part once", () => {
    const text = `${pack.replace("c_rating = 30 ; ", "")}powerplant side { at = (0 mm, 200 mm, 0 mm) ; battery = pack ; mirror = yes ; ${motor("; max_current = 6 A")} ; ${propeller()} }`;
    expect(found(text, "current_over_limit").map((f) => f.message.split(" ")[0])).toEqual(["side.motor"]);
  });

  it("says so when the band of the inputs reaches past", () => {
    const loose = pack + plant("right_thrust = 2 deg", motor("; max_current = 26 A").replace("1100 rpm/V", "1100 rpm/V ± 6 %"));
    const margin = analyseText(loose).sets[0].value("power.current_margin")!;
    expect(margin.value).toBeGreaterThan(1);
    const [hint] = found(loose, "current_over_limit");
    expect([hint?.severity, hint && at(loose, hint)]).toEqual(["hint", "26 A"]);
  });
});

describe("propeller_overspeed", () => {
  it("goes by the maker's figure, higher or lower, before the blade type's", () => {
    const wide = (more: string) => pack + plant("right_thrust = 2 deg", motor(), propeller(`; blade = wide ${more}`));
    expect(found(wide(""), "propeller_overspeed")[0].severity).toBe("warning");
    expect(found(wide("; max_rpm = 14000 rpm"), "propeller_overspeed")).toEqual([]);
    const [maker] = found(wide("; max_rpm = 6000 rpm"), "propeller_overspeed");
    expect([maker.severity, at(wide("; max_rpm = 6000 rpm"), maker)]).toEqual(["error", "6000 rpm"]);
  });

  it("looks at the tips' Mach number where blades would stand more", () => {
    const fast = pack.replace("cells = 3", "cells = 5") + plant("right_thrust = 2 deg", motor().replace("1100", "2300"), propeller("; blade = thick ; max_rpm = 60000 rpm").replace("5 in", "3 in"));
    expect(found(fast, "propeller_overspeed")[0].message).toMatch(/reach Mach 0\.\d/);
  });
});

describe("thrust_line_unbalanced", () => {
  const single = (head: string, more = "") => pack + plant(head, motor(), propeller(more));

  it("hints at a strong tractor single without side thrust, and to the side its propeller needs", () => {
    const [hint] = found(single("down_thrust = 2 deg"), "thrust_line_unbalanced");
    expect([hint.severity, hint.fixes![0].title]).toEqual(["hint", "Write right_thrust = 2 deg"]);
    expect(found(applied(single("down_thrust = 2 deg"), hint.fixes![0]), "thrust_line_unbalanced")).toEqual([]);
    expect(found(single("right_thrust = 1 deg"), "thrust_line_unbalanced")).toEqual([]);
    const wrong = single("right_thrust = 2 deg", "; rotation = anticlockwise");
    expect(found(wrong, "thrust_line_unbalanced")[0].message).toContain("its shaft points right too");
    expect(applied(wrong, found(wrong, "thrust_line_unbalanced")[0].fixes![0])).toContain("right_thrust = -2 deg");
  });

  it("keeps still over pushers, weak ones and gliders", () => {
    expect(found(single("pusher = yes"), "thrust_line_unbalanced")).toEqual([]);
    expect(found(`${single("down_thrust = 2 deg")}item lead { weight = 3 kg ; at = (0 mm, 0 mm, 0 mm) }`, "thrust_line_unbalanced")).toEqual([]);
    expect(found(`airframe { class = indoor }\n${single("down_thrust = 2 deg")}`, "thrust_line_unbalanced")).toEqual([]);
  });

  it("mends both angles of a pair", () => {
    const side = (name: string, y: number, head: string, turn: string) =>
      `powerplant ${name} { at = (0 mm, ${y} mm, 0 mm) ; ${head} ${motor()} ; ${propeller(`; rotation = ${turn}`)} }\n`;
    const text = side("a", 200, "right_thrust = 2 deg ; down_thrust = 3 deg ;", "clockwise") + side("b", -200, "", "anticlockwise");
    const [finding] = found(text, "thrust_line_unbalanced");
    const after = applied(text, finding.fixes![0]);
    expect(after).toMatch(/powerplant b \{ right_thrust = -2 deg ; down_thrust = 3 deg ;/);
    expect(found(after, "thrust_line_unbalanced")).toEqual([]);
    const mirrored = side("a", 200, "mirror = yes ; right_thrust = 2 deg ;", "clockwise");
    expect(found(mirrored, "thrust_line_unbalanced")).toEqual([]);
  });
});

describe("propeller_strikes", () => {
  const hull = "fuselage hull { at = (0 mm, 0 mm, 0 mm) ; length = 700 mm ; width = 80 mm ; weight = 200 g }\n";
  const strikes = (text: string) => found(text, "propeller_strikes").map((f) => [f.severity, /(strikes|passes) (the ground [a-z ]+|the propeller of \w+|\w+)/.exec(f.message)![2].trim()]);
  const gear = (z: number, tail: number) => `gear legs { wheel main { at = (150 mm, 120 mm, ${z} mm) ; mirror = yes ; weight = 40 g } ; skid rear { at = (650 mm, 0 mm, ${tail} mm) ; weight = 5 g } }\n`;
  const nose = (more = "") => `powerplant nose { at = (-30 mm, 0 mm, 0 mm) ; ${motor()} ; ${propeller(more)} }\n`;
  // 9 in: blades reach 114.3 mm down.

  it("measures the ground with the tail up, where the blades come lowest", () => {
    expect(strikes(hull + nose() + gear(-150, -40))).toEqual([]);
    expect(strikes(hull + nose() + gear(-130, -40))).toEqual([["warning", "the ground with the tail up at"]]);
    expect(strikes(hull + nose() + gear(-110, -40))).toEqual([["error", "the ground with the tail up by"]]);
    const text = hull + nose() + gear(-130, -40);
    expect(found(text, "propeller_strikes")[0].message).toContain("at 15.7 mm");
    // 130 mm less 25 mm of clearance leave a radius of 105 mm: 8.0 in is the next below 8.27 in.
    expect(applied(text, found(text, "propeller_strikes")[0].fixes![0])).toContain("diameter = 8 in");
  });

  it("measures it as it stands on a nose wheel", () => {
    const tricycle = (front: number) => `gear legs { wheel front { at = (40 mm, 0 mm, ${front} mm) ; weight = 30 g } ; wheel main { at = (300 mm, 120 mm, -150 mm) ; mirror = yes ; weight = 40 g } }\n`;
    expect(strikes(hull + nose() + tricycle(-150))).toEqual([]);
    // Nose leg 40 mm shorter: the ground rises by 40 in 260 towards the propeller.
    expect(strikes(hull + nose() + tricycle(-110))).toEqual([["error", "the ground as it stands by"]]);
  });

  it("knows the body a shaft runs into from others", () => {
    expect(strikes(hull + nose())).toEqual([]);
    const beside = (y: number) => `${hull}powerplant side { at = (100 mm, ${y} mm, 0 mm) ; ${motor()} ; ${propeller()} }\n`;
    // The hull is 40 mm to its side where the disc stands: 114.3 mm of blade and 10 mm more.
    expect(strikes(beside(150))).toEqual([["error", "hull"]]);
    expect(strikes(beside(160))).toEqual([["warning", "hull"]]);
    expect(strikes(beside(170))).toEqual([]);
  });

  it("looks at discs side by side", () => {
    const pair = (y: number) => `powerplant side { at = (0 mm, ${y} mm, 0 mm) ; mirror = yes ; ${motor()} ; ${propeller()} }\n`;
    expect(strikes(pair(110))).toEqual([["error", "the propeller of its"]]);
    expect(strikes(pair(117))).toEqual([["warning", "the propeller of its"]]);
    expect(strikes(pair(120))).toEqual([]);
  });
});

describe("channel_clash", () => {
  const parts = "servo ail { weight = 9 g ; at = (0 mm, 50 mm, 0 mm) ; mirror = yes }\nservo ele { weight = 9 g ; at = (0 mm, 0 mm, 0 mm) }\n";
  const rx = (outputs: string, name = "rx") => `receiver ${name} { outputs = ${outputs} ; weight = 6 g ; at = (0 mm, 0 mm, 0 mm) }\n`;
  const clashes = (text: string) => found(text, "channel_clash");

  it("is silent without a receiver, and while none says what it drives", () => {
    expect(clashes(parts)).toEqual([]);
    expect(clashes(`${parts}receiver rx { weight = 6 g ; at = (0 mm, 0 mm, 0 mm) }`)).toEqual([]);
  });

  it("takes a mirrored name for both, on one Y-lead", () => {
    expect(clashes(parts + rx("[ail, ele]"))).toEqual([]);
    expect(clashes(parts + rx("[[ail.left, ail.right], ele]"))).toEqual([]);
  });

  it("puts both of a pair on free outputs, the rest at the end", () => {
    const text = parts + rx("[ele, none]");
    const [finding, ...more] = clashes(text);
    expect([more.length, finding.message]).toEqual([0, "ail.right and ail.left are on no output of rx, so nothing drives them; name them among the outputs"]);
    expect(applied(text, finding.fixes![0])).toContain("[ele, ail.right, ail.left]");
  });

  it("considers all receivers together", () => {
    expect(clashes(parts + rx("[ail.left]", "a") + rx("[ail.right, ele]", "b"))).toEqual([]);
    const text = parts + rx("[ail.left, ele]", "a") + rx("[ail.right, ele]", "b");
    const [finding] = clashes(text);
    expect(finding.message).toContain("ele is on output 2 of a and on output 2 of b");
    expect(clashes(applied(text, finding.fixes![0]))).toEqual([]);
    expect(clashes(parts + rx("[ail, ail.left, ele]"))[0].message).toContain("ail.left is on output 1 of rx and on output 2 of rx");
  });

  it("keeps the throttle off the surfaces, and Y-leads short", () => {
    const drive = `powerplant nose { at = (0 mm, 0 mm, 0 mm) ; ${motor()} ; ${propeller()} ; esc { max_current = 60 A ; weight = 20 g } }\n`;
    expect(clashes(parts + drive + rx("[ail, [ele, nose.esc]]")).map((f) => f.severity)).toEqual(["error"]);
    expect(clashes(parts + drive + rx("[ail, ele]"))[0].message).toContain("nose.esc is on no output");
    const flaps = [1, 2, 3, 4, 5].map((n) => `servo f${n} { weight = 9 g ; at = (0 mm, 0 mm, 0 mm) }\n`).join("");
    expect(clashes(flaps + rx("[[f1, f2, f3, f4, f5]]")).map((f) => f.severity)).toEqual(["warning"]);
    expect(clashes(`${flaps}${rx("[[f1, f2, f3, f4, f5]]")}limits { channel_clash.lead = 6 }`)).toEqual([]);
  });
});

describe("rule_mass", () => {
  const rule = (weight: string) => found(`airframe { }\nitem whole { weight = ${weight} ; at = (0 mm, 0 mm, 0 mm) }`, "rule_mass").map((f) => f.severity);
  it("points at a step just passed, and at the last for good", () => {
    expect([rule("249 g"), rule("250 g"), rule("299 g"), rule("301 g"), rule("24.9 kg"), rule("25 kg"), rule("80 kg")]).toEqual([[], ["hint"], ["hint"], [], [], ["hint"], ["hint"]]);
  });
  it("says so where only the band reaches it", () => {
    expect(rule("247 g ± 4 g")).toEqual(["hint"]);
  });
});

describe("thrust_margin_low", () => {
  it("takes the propeller that lifts the heaviest loading, within the ratings", () => {
    const text = (amps: number) => `${pack.replace("cells = 3", "cells = 2")}${plant("right_thrust = 2 deg", motor(`; max_current = ${amps} A`))}
item all_else { weight = 830 g ; at = (0 mm, 0 mm, 0 mm) }
item ballast { weight = 100 g ; at = (0 mm, 0 mm, 0 mm) ; optional = yes }
loading light { }
loading heavy { with = [ballast] }`;
    const [finding] = found(text(30), "thrust_margin_low");
    expect(finding.message).toContain("in heavy");
    expect(found(applied(text(30), finding.fixes![0]), "thrust_margin_low")).toEqual([]);
    expect(found(text(12), "thrust_margin_low")[0].fixes).toEqual([]);
  });
});

describe("fin_volume_low", () => {
  it("misses a fin once the rest weighs something", () => {
    const tail = 'tailplane stab { at = (600 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 12 g ; panel half { span = 180 mm ; chord = 100 mm } }\n';
    expect(found(wing + tail, "fin_volume_low")).toEqual([]);
    expect(found(wing + tail + pack, "fin_volume_low").map((f) => f.message)).toEqual([expect.stringContaining("there is no fin")]);
    expect(found(wing + tail.replace("span = 180 mm", "span = 180 mm ; dihedral = 40 deg") + pack, "fin_volume_low")).toEqual([]);
  });
});
