import { describe, expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import { storeOf, type Store } from "../../../server/compute/battery/store";
import { absenceOf } from "../../../server/figures/absence";
import { analyseText } from "../../service";
import { expectNear } from "../../published/near";

// Plates have handbook sections, so that nothing waits for a polar here.
const motor = `
powerplant nose { at = (-205 mm, 0 mm, 0 mm) ; battery = pack ; right_thrust = 2 deg
  motor { kv = 1000 rpm/V ; resistance = 60 mohm ; no_load_current = 1 A ; weight = 70 g }
  propeller { diameter = 10 in ; pitch = 5 in ; weight = 12 g }
  esc { weight = 25 g } }`;

const text = (rest: string, { power = motor, weight = "150 g", airframe = "" } = {}) => `
airframe "Sortie" { class = motor_glider ; ${airframe} }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 220 g ; panel half { span = 650 mm ; chord = 200 mm ; dihedral = 3 deg } }
tailplane stab { at = (600 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 25 g
  panel half { span = 220 mm ; chord = 120 mm ; elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg } } }
fin upright { at = (600 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 12 g ; panel only { span = 180 mm ; chord = 140 mm } }
fuselage hull { at = (-200 mm, 0 mm, 0 mm) ; length = 940 mm ; width = 60 mm ; height = 70 mm ; weight = ${weight} }
battery pack { cells = 3 ; capacity = 1300 mAh ; weight = 120 g ; at = (-140 mm, 0 mm, 0 mm) }
${power}
${rest}`;

const flown = (rest: string, change?: Parameters<typeof text>[1]) => {
  const analysis = analyseText(text(rest, change));
  const set = analysis.sets[0];
  const figure = (name: string) => set.value(name);
  return { analysis, set, figure, value: (name: string) => figure(name)!.value, of: (name: string) => figure(`flight.sortie.day.${name}`)! };
};

describe("the figures of a sortie", () => {
  const day = flown(`sortie day {
  equipment = 5 W
  leg up   { climb = full ; height = 60 m }
  leg out  { speed = 12 m/s ; distance = 600 m }
  leg wait { speed = 11 m/s ; bank = 30 deg ; time = 3 min }
  leg sink { speed = 12 m/s ; climb = -1 m/s ; height = 20 m }
  leg down { glide = yes ; speed = 12 m/s ; height = 40 m }
}`);
  const { legs } = day.set.facts.sorties![0].flown;
  const { table, flown: motors } = day.set.facts.flight!;

  it("its time and way are those of its legs by hand", () => {
    const glide = Math.atan(day.set.facts.flight!.table.drag(12)! / (day.value("mass.total") * 9.80665));
    const times = [legs[0].time, 600 / 12, 180, 20, 40 / (12 * Math.sin(glide))];
    // The glide's slope by the drag at full lift: 0.5 % at 1 in 10.
    expectNear(day.of("time").value, times.reduce((a, b) => a + b), 2e-3);
    const ways = [Math.sqrt(legs[0].leg.speed ** 2 - (60 / legs[0].time) ** 2) * legs[0].time, 600, 11 * 180, 20 * Math.sqrt(12 ** 2 - 1), (times[4] * 12) * Math.cos(glide)];
    expectNear(day.of("distance").value, ways.reduce((a, b) => a + b), 2e-3);
    expect(legs.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo(0, 9);
  });

  it("a level leg takes what the motor takes for its drag, and the equipment; a turn the drag of more lift; a glide the equipment", () => {
    const [, out, wait, sink, down] = legs;
    const turning = 1 / Math.cos(Math.PI / 6);
    expectNear(out.power, motors!.electricPower(table.drag(12)!, 12)! + 5, 1e-9);
    expectNear(wait.power, motors!.electricPower(turning * table.drag(11 / Math.sqrt(turning))!, 11)! + 5, 1e-9);
    expect(sink.power).toBeLessThan(out.power);
    expect(down.power).toBe(5);
  });

  it("the charge is power over volts under load, summed in small steps", () => {
    const store = storeOf({ path: "pack", wired: "single", packs: [{ path: "pack", cells: 3, parallel: 1, chemistry: "lipo", capacity: 1.3 * 3600, usable: 0.8 }] }) as Store;
    let charge = 1;
    for (const { power, time } of legs) {
      for (let i = 0; i < 1000; i++) {
        const emf = store.emf(charge);
        const current = (emf - Math.sqrt(emf ** 2 - 4 * store.resistance * power)) / (2 * store.resistance);
        charge -= (current * time) / 1000 / store.capacity;
      }
    }
    // Steps of a thousandth from their beginning: within a thousandth of what is taken.
    expectNear(day.of("charge_left").value, charge, 1e-4);
    expectNear(day.of("charge_used").value, (1 - charge) * store.capacity, 1e-3);
  });

  it("tells of its legs one by one, each figure of what it sums", () => {
    const inputs = (name: string) => day.set.get(`flight.sortie.day.${name}`)!.account.inputs.map((input) => input.name);
    expect(inputs("time")).toEqual(expect.arrayContaining(["up: speed", "wait: time", "down: time"]));
    expect(inputs("distance")).toEqual(expect.arrayContaining(["out: distance", "up: height", "sink: height"]));
    expect(inputs("charge_used")).toEqual(expect.arrayContaining(["equipment", "out: power from the packs", "out: charge"]));
    expect(inputs("charge_left")).toContain("wait: left after it");
  });

  it("has a series of the charge left, and the height, at the ends of its legs", () => {
    const series = day.set.series().find(({ name }) => name === "flight.sortie.day")!;
    expect(series.x.values).toHaveLength(6);
    expectNear(series.x.values[5]!, day.of("time").value, 1e-12);
    expectNear(series.lines[0].values[5]!, day.of("charge_left").value, 1e-12);
    expect(series.lines[0].values[0]).toBe(1);
    [0, 60, 60, 60, 40, 0].forEach((height, i) => expect(series.lines[1].values[i]).toBeCloseTo(height, 9));
  });

  it("endurance over speed has the longest and farthest flight in it", () => {
    const { x, lines: [time, distance] } = day.set.series().find(({ name }) => name === "flight.endurance")!;
    const most = (row: typeof time) => Math.max(...row.values.map((value) => value ?? 0));
    // The greatest of 24 places: no more than the best, and near it.
    for (const [row, best] of [[time, "flight.endurance"], [distance, "flight.range"]] as const) {
      expect(most(row)).toBeLessThanOrEqual(day.value(best) * (1 + 1e-3));
      expect(most(row)).toBeGreaterThan(day.value(best) * 0.98);
    }
    x.values.forEach((speed, i) => { if (time.values[i] !== undefined) expectNear(distance.values[i]!, time.values[i] * speed!, 1e-9); });
  });
});

describe("bands of a sortie", () => {
  it("follow a leg's own tolerance, and the weight", () => {
    const plan = (distance: string) => `sortie day { leg out { speed = 12 m/s ; distance = ${distance} } }`;
    const sharp = flown(plan("1200 m"));
    expect(halfWidth(sharp.of("time"))).toBe(0);
    const loose = flown(plan("1200 m ± 60 m"));
    expectNear(halfWidth(loose.of("time")), 5, 1e-9);
    expectNear(halfWidth(loose.of("charge_used")) / loose.of("charge_used").value, 0.05, 0.02);
    // At the balance point, so that trim stays as it is.
    const at = (ballast: string) => flown(`${plan("1200 m")}
item ballast { weight = ${ballast} ; at = (${sharp.value("cg.x") * 1000} mm, 0 mm, ${sharp.value("cg.z") * 1000} mm) }`);
    const heavy = at("60 g ± 30 g");
    const [light, more] = ["30 g", "90 g"].map((ballast) => at(ballast).of("charge_used").value);
    expect(halfWidth(heavy.of("time"))).toBe(0);
    // The band takes each section's drag at the Reynolds number of the same lift, at 2 % less or more speed.
    expectNear(halfWidth(heavy.of("charge_used")), (more - light) / 2, 0.1);
  });
});

describe("speeds by name", () => {
  const speedOf = (leg: string, change?: Parameters<typeof text>[1]) => {
    const one = flown(`sortie day { leg one { ${leg} } }`, change);
    return { speed: one.set.facts.sorties![0].flown.legs[0].leg.speed, ...one };
  };
  it.each([["time = 1 min", "flight.cruise_speed"], ["time = 1 min ; speed = cruise", "flight.cruise_speed"]])("%s: %s", (leg, name) => {
    const { speed, value } = speedOf(leg);
    expectNear(speed, value(name), 1e-9);
  });
  it("are those at which it is best, but none under 1.3 × the stall in its bank", () => {
    for (const name of ["best_range", "best_endurance", "best_climb", "best_glide", "least_sink"]) {
      for (const bank of [0, 50]) {
        const { speed, set, value } = speedOf(`time = 10 s ; speed = ${name}${bank ? ` ; bank = ${bank} deg` : ""}`);
        const { performance, points } = set.facts.flight!;
        const best = { best_range: value("flight.best_range_speed"), best_endurance: performance!.longest!.speed, best_climb: performance!.climb!.speed, best_glide: points.glide.speed, least_sink: points.sink.speed }[name]!;
        expectNear(speed, Math.max(best, (1.3 * value("flight.stall_speed")) / Math.sqrt(Math.cos((bank * Math.PI) / 180))), 1e-9);
      }
    }
  });
  it("climbing full and gliding have their own where none is written, and a cruise that is written stands", () => {
    const climb = speedOf("climb = full ; height = 30 m");
    expectNear(climb.speed, climb.set.facts.flight!.performance!.climb!.speed, 1e-9);
    expect(speedOf("time = 1 min", { airframe: "cruise = 9 m/s" }).speed).toBe(9);
  });
});

describe("where there is nothing to tell", () => {
  it("a sortie stands in the loading it names, else in the first", () => {
    const analysis = analyseText(text("loading a { }\nloading b { }\nsortie one { leg out { time = 1 min } }\nsortie two { loading = b ; leg out { time = 1 min } }"));
    const names = (loading: string) => analysis.set(loading).all().filter(({ name }) => name.endsWith(".charge_left")).map(({ name }) => name);
    expect(names("a")).toEqual(["flight.sortie.one.charge_left"]);
    expect(names("b")).toEqual(["flight.sortie.two.charge_left"]);
    expect(absenceOf("flight.sortie.two.time", analysis.set("a"))).toBe("no sortie of that name is flown in this loading; there is one");
  });
  it("one that can't be flown has no figures, and says which leg", () => {
    const { set, figure } = flown("sortie day { leg out { time = 1 min } ; leg dash { speed = 80 m/s ; time = 1 min } }");
    expect(figure("flight.sortie.day.time")).toBeUndefined();
    expect(absenceOf("flight.sortie.day.time", set)).toBe("leg dash can't be flown to its end; pack_drained tells why");
  });
  it("a glider's has a time, and no charge", () => {
    const { set, of, figure } = flown("sortie day { leg down { glide = yes ; height = 50 m } }", { power: "" });
    expect(of("time").value).toBeGreaterThan(20);
    expect(figure("flight.sortie.day.charge_left")).toBeUndefined();
    expect(absenceOf("flight.sortie.day.charge_used", set)).toBe("no pack feeds a motor");
  });
  it("motors that can't be computed leave it out, with the reason", () => {
    const { set, figure } = flown("sortie day { leg out { time = 1 min } }", { power: "powerplant nose { at = (-205 mm, 0 mm, 0 mm) ; battery = pack ; propeller { diameter = 10 in ; pitch = 5 in ; weight = 12 g } }" });
    expect(figure("flight.sortie.day.time")).toBeUndefined();
    expect(absenceOf("flight.sortie.day.time", set)).toContain("nose has no motor");
  });
});
