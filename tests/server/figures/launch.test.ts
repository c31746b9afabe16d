import { describe, expect, it } from "vitest";
import { absenceOf } from "../../../server/figures/absence";
import { halfWidth } from "../../../grammar/units/quantity";
import { analyseText, figureOf } from "../../service";
import { expectNear } from "../../published/near";
import { single } from "./launched";

const of = (change?: Parameters<typeof single>[0]) => analyseText(single(change));

describe("on wheels", () => {
  const rolling = of({ wheels: true });
  const figure = (name: string) => figureOf(rolling, `flight.${name}`)!;

  it("hard ground takes less to leave and more to stop on", () => {
    expect(figure("takeoff_run_hard")).toBeLessThan(figure("takeoff_run"));
    expect(figure("landing_run_hard")).toBeGreaterThan(figure("landing_run"));
    // Friction 0.04 alone, without drag: v² / (2 µ g).
    expect(figure("landing_run_hard")).toBeLessThan((1.15 * figure("stall_speed")) ** 2 / (2 * 0.04 * 9.80665));
    expect(figure("landing_run_hard")).toBeGreaterThan(0);
  });

  it("approaches at 1.3 × stall, with the stall's band", () => {
    expect(figure("landing_speed")).toBeCloseTo(1.3 * figure("stall_speed"), 12);
    const heavy = of({ lead: "± 20 g" }).sets[0];
    expect(halfWidth(heavy.value("flight.landing_speed")!)).toBeCloseTo(1.3 * halfWidth(heavy.value("flight.stall_speed")!), 12);
  });

  it("is not thrown, and says so", () => {
    const [set] = rolling.sets;
    expect(set.get("flight.hand_launch.sink")).toBeUndefined();
    expect(absenceOf("flight.hand_launch.climb", set)).toMatch(/stands on wheels.*flight\.takeoff_run/);
  });
});

describe("thrown by hand at 8 m/s", () => {
  const light = of({ weight: "1 g", chord: "280 mm" });
  const heavy = of({ weight: "400 g ± 20 g" });
  const launch = (analysis: ReturnType<typeof of>, word: string) => figureOf(analysis, `flight.hand_launch.${word}`);

  it("over the stall it sinks nothing, and climbs by what thrust leaves", () => {
    expect(figureOf(light, "flight.stall_speed")).toBeLessThan(8);
    expect(launch(light, "sink")).toBe(0);
    const { loaded, table, flown } = light.sets[0].facts.flight!;
    expect(launch(light, "climb")).toBeCloseTo(((flown!.thrust(8)! - table.drag(8)!) * 8) / (loaded.mass * 9.80665), 9);
  });

  it("below the stall it loses height, and the more the heavier", () => {
    const { loaded, table, flown, points: { stall } } = heavy.sets[0].facts.flight!;
    expect(stall.speed).toBeGreaterThan(8);
    const drag = table.drag(stall.speed)! * (8 / stall.speed) ** 2;
    expect(launch(heavy, "climb")).toBeCloseTo(((flown!.thrust(8)! - drag) * 8) / (loaded.mass * 9.80665), 9);
    const sink = heavy.sets[0].value("flight.hand_launch.sink")!;
    expect(sink.value).toBeGreaterThan(0);
    const more = figureOf(of({ weight: "420 g" }), "flight.hand_launch.sink")!;
    const less = figureOf(of({ weight: "380 g" }), "flight.hand_launch.sink")!;
    // The band goes by the slope; over ±20 g the curve of sink over weight bends, though the mean of both sides bends little.
    expectNear(halfWidth(sink), (more - less) / 2, 0.1);
  });

  it("cautions for hands", () => {
    expect(light.sets[0].get("flight.hand_launch.sink")!.account.notModelled).toMatch(/hands clear of the propeller/);
  });

  it("absent without a motor, and on hard ground without wheels", () => {
    const [set] = of({ motor: false }).sets;
    expect(absenceOf("flight.hand_launch.sink", set)).toBe("there is no powerplant in this loading");
    expect(absenceOf("flight.landing_run_hard", set)).toMatch(/main wheels/);
  });

  it("far below the stall it says that it falls", () => {
    const [set] = of({ weight: "9 kg" }).sets;
    expect(set.get("flight.hand_launch.sink")).toBeUndefined();
    expect(absenceOf("flight.hand_launch.sink", set)).toMatch(/far below the stall/);
  });
});
