import { describe, expect, it } from "vitest";
import type { Finding } from "../../../shared/finding";
import { analyseText, figureOf } from "../../service";
import { applied } from "./edits";

const found = (text: string, code: string): Finding[] => analyseText(text).findings.filter((finding) => finding.code === code);
const at = (text: string, { place }: Finding) => text.slice(place.start, place.end);

interface Parts {
  readonly motor?: string;
  readonly propeller?: string;
  readonly cells?: number;
  readonly more?: string;
  readonly kind?: string;
  readonly weight?: number;
}

/** A model that flies on its motor; all of it invented. */
const model = ({
  motor = "kv = 1000 rpm/V ; resistance = 50 mohm ; no_load_current = 1 A ; weight = 110 g", propeller = "diameter = 10 in ; pitch = 5 in ; weight = 18 g",
  cells = 3, more = "", kind = "sport", weight = 420,
}: Parts = {}) => `airframe { class = ${kind} }
wing main { at = (190 mm, 0 mm, 30 mm) ; foil = naca("2412") ; weight = 190 g ; panel half { span = 600 mm ; chord = 200 mm ; dihedral = 3 deg } }
tailplane stab { at = (700 mm, 0 mm, 20 mm) ; foil = naca("0009") ; incidence = -1 deg ; weight = 30 g ; panel half { span = 230 mm ; chord = 130 mm } ; elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg } }
fin upright { at = (700 mm, 0 mm, 20 mm) ; foil = naca("0009") ; weight = 16 g ; panel only { span = 180 mm ; chord = 150 mm } }
fuselage hull { at = (0 mm, 0 mm, 0 mm) ; length = 850 mm ; width = 80 mm ; weight = ${weight} g ; balance = 230 mm }
battery pack { cells = ${cells} ; capacity = 2700 mAh ; weight = 220 g ; at = (290 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-30 mm, 0 mm, 0 mm) ; battery = pack ; right_thrust = 2 deg
  motor { ${motor} }
  propeller { ${propeller} }
}
${more}`;

describe("current_over_limit in flight", () => {
  const steep = (limit: string) => model({ motor: `kv = 1050 rpm/V ; resistance = 55 mohm ; no_load_current = 1 A ; weight = 160 g ${limit}`, propeller: "diameter = 11 in ; pitch = 6 in ; folding = yes ; weight = 20 g" });
  const { facts } = analyseText(steep("")).sets[0];
  const current = (run: { readonly powerplants: readonly object[] }) => (run.powerplants[0] as { readonly motorCurrent: number }).motorCurrent;
  const standing = current(facts.power!.full);
  const most = facts.envelope!.full.reduce((a, b) => (current(b.run) > current(a.run) ? b : a));

  it("is greatest at some speed where the blades are stalled standing", () => {
    expect(most.speed).toBeGreaterThan(0);
    expect(current(most.run)).toBeGreaterThan(1.01 * standing);
  });

  it("tells the speed, where standing is within the rating", () => {
    const text = steep(`; max_current = ${((standing + current(most.run)) / 2).toFixed(2)} A`);
    const [finding, ...others] = found(text, "current_over_limit");
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: "warning" });
    expect(finding.message).toMatch(/^nose\.motor takes [\d.]+ A at [\d.]+ m\/s at full throttle on a full charge, over its lasting/);
    expect(finding.fixes!.map(({ title }) => title)).toEqual([expect.stringMatching(/^Take a propeller of [\d.]+ in$/), expect.stringMatching(/^Take a propeller of [\d.]+ in pitch$/)]);
    for (const fix of finding.fixes!) expect(found(applied(text, fix), "current_over_limit")).toEqual([]);
  });

  it("is told standing where that is the most", () => {
    const [finding] = found(model({ motor: "kv = 1000 rpm/V ; resistance = 50 mohm ; no_load_current = 1 A ; max_current = 15 A ; weight = 110 g" }), "current_over_limit");
    expect(finding.message).toContain(" A standing at full throttle");
  });

  it("may be waived, and has the design's own limit", () => {
    const over = steep(`; max_current = ${((standing + current(most.run)) / 2).toFixed(2)} A`);
    expect(found(`${over}\nlimits { current_over_limit.lasting = 1.2 }`, "current_over_limit")).toEqual([]);
    expect(found(`${over}\nwaive current_over_limit because "flown on half a charge"`, "current_over_limit")).toEqual([]);
  });
});

describe("motor_hot", () => {
  const motor = (weight: number, resistance = 50) => model({ motor: `kv = 1000 rpm/V ; resistance = ${resistance} mohm ; no_load_current = 1 A ; weight = ${weight} g` });
  const heat = (text: string) => figureOf(analyseText(text), "power.nose.motor_heat")!;

  it("is the losses of the motor over its weight, and has its account", () => {
    const analysis = analyseText(motor(110));
    const run = analysis.sets[0].facts.power!.full.powerplants[0];
    if (!("thrust" in run)) throw new Error("it runs");
    // Resistance × current² and, behind it, volts × no-load current: M. Drela's first-order motor by hand.
    const byHand = 0.05 * run.motorCurrent ** 2 + (run.motorVolts - 0.05 * run.motorCurrent) * 1;
    expect(heat(motor(110)) / (byHand / 0.11)).toBeCloseTo(1, 9);
    expect(analysis.sets[0].get("power.nose.motor_heat")!.account.inputs.map(({ name }) => name)).toContain("weight of nose.motor");
    expect(analysis.findings.filter(({ code }) => code === "motor_hot")).toEqual([]);
  });

  it("stands at the motor, in the climb before standing, and its propellers leave it cool", () => {
    const light = 0.11 * heat(motor(110)) / 1300;
    const text = motor(Math.round(1000 * light));
    const [finding, ...others] = found(text, "motor_hot");
    expect(others).toEqual([]);
    expect([finding.severity, at(text, finding)]).toEqual(["warning", "motor"]);
    expect(finding.message).toMatch(/^climbing at full throttle, 1[0-3]\d\d W\/kg of heat are left in the motor of nose; it stands about 1000 W\/kg for a minute/);
    expect(finding.fixes!.length).toBeGreaterThan(0);
    for (const fix of finding.fixes!) expect(found(applied(text, fix), "motor_hot")).toEqual([]);
  });

  it("at cruise is told before all else, without a fix", () => {
    const [finding] = found(`${motor(110)}\nlimits { motor_hot.cruise = 10 W/kg }`, "motor_hot");
    expect(finding.message).toMatch(/^level at cruise, .*limits asks for 10 W\/kg/);
    expect(finding.fixes).toBeUndefined();
  });

  it("leaves motors over their rating to current_over_limit, and those without weight alone", () => {
    const hot = motor(31);
    expect(found(hot, "motor_hot")).toHaveLength(1);
    const rated = hot.replace("weight = 31 g", "weight = 31 g ; max_current = 20 A");
    expect(found(rated, "motor_hot")).toEqual([]);
    expect(found(rated, "current_over_limit")).toHaveLength(1);
    expect(found(hot.replace(" ; weight = 31 g", ""), "motor_hot")).toEqual([]);
  });

  it("says so where only its band reaches over", () => {
    const grams = Math.round((1000 * 0.11 * heat(motor(110))) / 1450);
    const text = `${model({ motor: `kv = 1000 rpm/V ; resistance = 50 mohm ± 15 % ; no_load_current = 1 A ; weight = ${grams} g` })}\nlimits { motor_hot.climb = 2000 W/kg }`;
    expect(found(text, "motor_hot")).toMatchObject([{ severity: "hint", message: expect.stringContaining("its band reaches past the limit") as string }]);
  });
});

describe("propeller_overspeed in flight", () => {
  const analysis = analyseText(model());
  const { facts } = analysis.sets[0];
  const turns = (run: { readonly powerplants: readonly object[] }) => ((run.powerplants[0] as { readonly rotation: number }).rotation * 30) / Math.PI;
  const standing = turns(facts.power!.full);
  const level = turns(facts.envelope!.full.at(-1)!.run);
  const limited = (rpm: number, more = "") => model({ propeller: `diameter = 10 in ; pitch = 5 in ; weight = 18 g ; max_rpm = ${rpm.toFixed(0)} rpm`, more });

  it("turns faster the faster it flies, and slower with the throttle shut", () => {
    const { open, shut } = facts.envelope!.dive;
    expect(level).toBeGreaterThan(1.02 * standing);
    expect(turns(open.run)).toBeGreaterThan(level);
    expect(turns(shut.run)).toBeLessThan(level);
    expect(open.speed).toBeCloseTo(1.2 * analysis.sets[0].value("flight.max_speed")!.value, 6);
  });

  it("tells of level flight where standing is within", () => {
    const [finding] = found(limited((standing + level) / 2), "propeller_overspeed");
    expect(finding.severity).toBe("error");
    expect(finding.message).toMatch(/turns \d+ rpm at [\d.]+ m\/s, level at full throttle on a full charge; its maker allows/);
    expect(found(limited(0.98 * standing), "propeller_overspeed")[0].message).toContain("standing at full throttle");
    expect(found(limited(1.01 * level), "propeller_overspeed")).toEqual([]);
  });

  it("tells of the dive that the design allows, at full throttle; of another with the throttle shut", () => {
    const own = "loads { never_exceed = 60 m/s }";
    const dive = analyseText(limited(99_999, own)).sets[0].facts.envelope!.dive;
    expect(dive.open.speed).toBe(60);
    const [finding] = found(limited((level + turns(dive.open.run)) / 2, own), "propeller_overspeed");
    expect(finding.message).toMatch(/in a dive at 60 m\/s with full throttle/);
    expect(found(limited(1.01 * turns(dive.open.run), `${own}\nlimits { propeller_overspeed.mach = 0.9 }`), "propeller_overspeed")).toEqual([]);
    // Above the speed that the air alone turns it to, the motor only drags.
    expect(found(limited(1.01 * turns(dive.open.run), own), "propeller_overspeed")[0].message).toMatch(/^the tips of nose reach Mach 0\.\d+ in a dive at 60 m\/s/);
  });
});

describe("thrust_margin_low in flight", () => {
  it("tells of the climb where standing thrust is enough, and every fix gives it", () => {
    // Little pitch pulls well standing and hardly in flight.
    const text = model({ propeller: "diameter = 9 in ; pitch = 3 in ; weight = 18 g", more: "limits { thrust_margin_low.climb_rate = 6 m/s }" });
    const [finding, ...others] = found(text, "thrust_margin_low");
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: "warning", figure: "flight.climb_rate" });
    expect(finding.message).toMatch(/^it climbs [\d.]+ m\/s at full throttle, limits asks for 6 m\/s/);
    expect(finding.fixes!.length).toBeGreaterThan(0);
    for (const fix of finding.fixes!) expect(found(applied(text, fix), "thrust_margin_low"), fix.title).toEqual([]);
  });

  it("tells of thrust over drag, with the speed", () => {
    const text = model({ more: "limits { thrust_margin_low.thrust_over_drag = 30 }" });
    expect(found(text, "thrust_margin_low")).toMatchObject([{ figure: "power.thrust_margin", message: expect.stringMatching(/^thrust is [\d.]+ of the drag level at [\d.]+ m\/s, limits asks for 30/) as string }]);
  });

  it("asks for none of a glider, and of each class for its own", () => {
    const weak = (kind: string) => found(model({ kind, cells: 2, propeller: "diameter = 7 in ; pitch = 3 in ; weight = 10 g", weight: 700 }), "thrust_margin_low").length;
    expect(["glider", "sport", "aerobatic"].map(weak)).toEqual([0, 1, 1]);
  });

  const weak = (more = "") => `airframe { class = sport }
item all_else { weight = 1100 g ; at = (0 mm, 0 mm, 0 mm) }
battery pack { cells = 2 ; capacity = 1300 mAh ; c_rating = 40 ; resistance = 30 mohm ; weight = 80 g ± 4 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-100 mm, 0 mm, 0 mm) ; battery = pack ; right_thrust = 2 deg
  motor { kv = 1100 rpm/V ; resistance = 90 mohm ; no_load_current = 0.7 A ; weight = 60 g ${more} }
  propeller { diameter = 9 in ; pitch = 5 in ; weight = 12 g }
}`;

  it("offers a larger propeller, cells with their weight and resistance, or another winding of the motor; each is enough", () => {
    const [{ fixes = [] }] = found(weak(), "thrust_margin_low");
    expect(fixes.map(({ title }) => title)).toEqual(["Take a propeller of 10.5 in", "Take a pack of 3 cells, 120 g by the weight of its cells", expect.stringMatching(/^Take a motor of \d+0 rpm\/V/)]);
    const [, cells, kv] = fixes.map((fix) => applied(weak(), fix));
    expect(cells).toContain("cells = 3 ; capacity = 1300 mAh ; c_rating = 40 ; resistance = 45 mohm ; weight = 120 g ± 4 g");
    const [, wound, resistance, idle] = /kv = (\d+) rpm\/V ; resistance = ([\d.]+) mohm ; no_load_current = ([\d.]+) A/.exec(kv)!.map(Number);
    // The same copper in more turns or fewer: resistance with the square, to the four digits written.
    expect(resistance / (90 * (1100 / wound) ** 2)).toBeCloseTo(1, 3);
    expect(idle / ((0.7 * wound) / 1100)).toBeCloseTo(1, 3);
    for (const fix of fixes) expect(found(applied(weak(), fix), "thrust_margin_low")).toEqual([]);
    expect(found(weak().replace("diameter = 9 in", "diameter = 10 in"), "thrust_margin_low")).toHaveLength(1);
    // Twenty rpm per volt less are not enough; ten are what the band asks for.
    expect(found(weak().replace("kv = 1100 rpm/V ; resistance = 90 mohm", `kv = ${wound - 20} rpm/V ; resistance = ${resistance} mohm`), "thrust_margin_low")).toHaveLength(1);
  });

  it("offers only what every part stands", () => {
    const [{ fixes = [] }] = found(weak("; max_current = 14 A"), "thrust_margin_low");
    for (const fix of fixes) expect(found(applied(weak("; max_current = 14 A"), fix), "current_over_limit")).toEqual([]);
    expect(fixes.length).toBeLessThan(3);
  });
});
