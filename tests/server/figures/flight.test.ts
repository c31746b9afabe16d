import { describe, expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import { analyseText, figureOf } from "../../service";
import { expectNear } from "../../published/near";

// Plates have handbook sections, so that nothing waits for a polar here.
const text = (change: { lead?: string; weight?: string; cruise?: string; wheels?: string; motor?: string; flaps?: string } = {}) => `
airframe "Flight" { class = sport ; ${change.cruise ?? ""} }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = flat(3 %) ; weight = 120 g
  panel half { span = 500 mm ; chord = 180 mm ; flap in { along = 5 % to 50 % ; chord = 25 % ; down = 30 deg } } }
tailplane stab { at = (560 mm, 0 mm, 20 mm) ; foil = flat(3 %) ; weight = 20 g
  panel half { span = 180 mm ; chord = 100 mm ; elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg } } }
fin upright { at = (560 mm, 0 mm, 20 mm) ; foil = flat(3 %) ; weight = 12 g ; panel only { span = 130 mm ; chord = 110 mm } }
fuselage hull { at = (-200 mm, 0 mm, 0 mm) ; length = 860 mm ; width = 60 mm ; height = 70 mm ; weight = 150 g }
item lead { weight = ${change.weight ?? "300 g"} ; at = (${change.lead ?? "-60 mm"}, 0 mm, 0 mm) }
${change.wheels ?? ""}
${change.motor ?? ""}
loading all { ${change.flaps ?? ""} }
`;

const motor = `
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (-60 mm, 0 mm, 0 mm) }
powerplant nose { at = (-205 mm, 0 mm, 0 mm) ; battery = pack
  motor { kv = 1000 rpm/V ; resistance = 60 mohm ; no_load_current = 1 A ; weight = 70 g }
  propeller { diameter = 10 in ; pitch = 5 in ; weight = 12 g }
  esc { weight = 25 g } }`;

const of = (change?: Parameters<typeof text>[0]) => {
  const analysis = analyseText(text(change));
  return (name: string) => figureOf(analysis, name)!;
};

describe("stall and trim", () => {
  const plain = of();

  it("the stall carries the weight", () => {
    // Standard air, g₀.
    expectNear(0.5 * 1.225 * plain("flight.stall_speed") ** 2 * plain("wing.area") * plain("aero.lift_max"), plain("mass.total") * 9.80665, 1e-6);
    expect(plain("aero.stall_station")).toBeLessThan(0.5);
    expect(plain("flight.cruise_speed")).toBeGreaterThanOrEqual(1.3 * plain("flight.stall_speed") * (1 - 1e-9));
    expect(plain("wing.reynolds_stall") / plain("wing.reynolds_cruise")).toBeCloseTo(plain("flight.stall_speed") / plain("flight.cruise_speed"), 9);
  });

  it("a balance point farther forward takes more elevator up, and leaves less of it; at the forward limit none is left", () => {
    const forward = of({ lead: "-100 mm" });
    expect(forward("trim.stab.half.full.stall")).toBeLessThan(plain("trim.stab.half.full.stall"));
    expect(forward("trim.throw_left")).toBeLessThan(plain("trim.throw_left"));
    const short = plain("cg.x") - plain("stability.cg_forward");
    const limit = of({ lead: `${(-0.06 - (short * plain("mass.total")) / 0.3) * 1000} mm` });
    // The limit is that of stick full up, the figures those of trim: one and the same there.
    expect(limit("trim.throw_left")).toBeCloseTo(0, 3);
    expect(limit("trim.stab.half.full.stall")).toBeCloseTo((-20 * Math.PI) / 180, 3);
  });

  it("flaps lower the stall speed", () => {
    expect(of({ flaps: "flaps = 30 deg" })("flight.stall_speed")).toBeLessThan(0.97 * plain("flight.stall_speed"));
  });

  it("bands follow the weight: stall speed goes with its root", () => {
    const at = (ballast: string) => `item ballast { weight = ${ballast} ; at = (${plain("cg.x") * 1000} mm, 0 mm, ${plain("cg.z") * 1000} mm) }`;
    const analysis = analyseText(text({ wheels: at("30 g ± 30 g") }));
    const stall = analysis.set("").value("flight.stall_speed")!;
    // 0.1 %: curvature over the step by which the slope is found; the plate's limit does not hang on the Reynolds number.
    expectNear(halfWidth(stall), (stall.value * 0.03) / figureOf(analysis, "mass.total")! / 2, 1e-3);
  });

  it("a cruise that is given is flown", () => {
    expect(of({ cruise: "cruise = 17 m/s" })("flight.cruise_speed")).toBeCloseTo(17, 9);
  });
});

describe("drag and glide", () => {
  const plain = of();
  it("best glide lies between the least and the most a wing of that aspect ratio with that parasite drag can have", () => {
    const [area, span, parasite] = ["wing.area", "wing.span", "aero.drag_parasite"].map(plain);
    // (L/D)max = ½ √(π e A / CD0); section drag grows with lift here, so less than with that of cruise, but not by half.
    const parabolic = 0.5 * Math.sqrt((Math.PI * plain("aero.span_efficiency") * span ** 2) / area / parasite);
    expect(plain("flight.glide_ratio")).toBeLessThan(1.1 * parabolic);
    expect(plain("flight.glide_ratio")).toBeGreaterThan(0.5 * parabolic);
    expect(plain("flight.sink_rate")).toBeGreaterThan(plain("flight.stall_speed") / plain("flight.glide_ratio"));
  });
  it("wheels cost glide and have a run", () => {
    const wheels = of({ wheels: "gear legs { wheel main { at = (20 mm, 120 mm, -140 mm) ; diameter = 60 mm ; weight = 20 g ; mirror = yes }\n wheel tail { at = (640 mm, 0 mm, -30 mm) ; diameter = 20 mm ; weight = 5 g ; steer = yes } }" });
    expect(wheels("aero.drag_parasite")).toBeGreaterThan(plain("aero.drag_parasite") + 0.002);
    expect(wheels("flight.landing_run")).toBeGreaterThan(5);
    expect(plain("flight.landing_run")).toBeUndefined();
  });
});

describe("on a motor", () => {
  const powered = of({ motor, lead: "0 mm" });
  it("climbs by spare power, and no faster than its thrust and weight allow", () => {
    expect(powered("power.thrust_margin")).toBeGreaterThan(1);
    expect(powered("flight.climb_rate")).toBeGreaterThan(0);
    expect(powered("flight.climb_rate")).toBeLessThan(powered("power.static_power") / (powered("mass.total") * 9.80665));
    expect(powered("flight.max_speed")).toBeGreaterThan(powered("flight.best_range_speed"));
    expect(powered("flight.range")).toBeGreaterThan(powered("flight.endurance") * powered("flight.stall_speed") * 0.9);
  });
  it("that pulls it straight up does so a little heavier too: no band to speak of", () => {
    const strong = motor.replace("cells = 3", "cells = 6");
    expect(strong).not.toBe(motor);
    const angle = analyseText(text({ motor: strong, weight: "200 g ± 2 g" })).set("").value("flight.climb_angle")!;
    expect(angle.value).toBeCloseTo(Math.PI / 2, 9);
    expect(halfWidth(angle)).toBeLessThan(1e-9);
  });
  it("gives series of equal length with units", () => {
    const analysis = analyseText(text({ motor }));
    const series = analysis.sets[0].series();
    expect(series.map(({ name }) => name).sort()).toEqual(
      ["aero.polar", "aero.span_loading", "flight.drag", "flight.endurance", "flight.power", "flight.thrust", "power.throttle", "stability.margin", "trim.speed"]);
    for (const { x, lines } of series) for (const line of lines) expect(line.values).toHaveLength(x.values.length);
  });
  it("nothing without a weight", () => {
    expect(figureOf(analyseText(text().replace(/weight = [^;}\n]*/g, "")), "flight.stall_speed")).toBeUndefined();
  });
});
