import { describe, expect, it } from "vitest";
import { deadPropellerDrag } from "../../../server/compute/drag/stopped-propeller";
import { absenceOf } from "../../../server/figures/absence";
import { settle } from "../../../server/model/design/settle";
import { halfWidth } from "../../../grammar/units/quantity";
import { expectNear } from "../../published/near";
import { analyseText, figureOf } from "../../service";
import { single } from "./launched";

const of = (change?: Parameters<typeof single>[0]) => analyseText(single(change));

describe("glide with motors off", () => {
  const plain = of();
  const folding = of({ propeller: "folding = yes" });
  const off = (analysis: ReturnType<typeof of>, word: "glide_ratio" | "sink_rate") => figureOf(analysis, `flight.power_off.${word}`)!;

  it.each([["turned or still", plain], ["folded", folding]])("%s: lift over drag of airframe and propeller at its speed", (_, analysis) => {
    const { loaded, model, table, performance } = analysis.sets[0].facts.flight!;
    const { speed, angle } = performance!.glide!;
    const [nose] = settle(analysis.sets[0].design.powerplants);
    const propeller = (deadPropellerDrag(nose, { speed, air: model.air }).area * model.air.density * speed ** 2) / 2;
    const lift = loaded.mass * 9.80665 * Math.cos(angle);
    // The propeller's area comes from a curve through eight speeds: 1 % of the glide.
    expectNear(off(analysis, "glide_ratio"), lift / (table.drag(speed, Math.cos(angle))! + propeller), 0.01);
    expect(off(analysis, "glide_ratio")).toBeCloseTo(1 / Math.tan(-angle), 9);
  });

  it("a propeller costs, one that folds costs less", () => {
    expect(off(plain, "glide_ratio")).toBeLessThan(0.97 * off(folding, "glide_ratio"));
    expect(off(folding, "glide_ratio")).toBeLessThan(figureOf(folding, "flight.glide_ratio")!);
    expect(off(plain, "sink_rate")).toBeGreaterThan(off(folding, "sink_rate"));
    expect(off(folding, "sink_rate")).toBeGreaterThan(figureOf(folding, "flight.sink_rate")!);
    const how = folding.sets[0].get("flight.power_off.glide_ratio")!.account.inputs.find(({ name }) => name === "nose")!.value;
    expect(how).toMatch(/folded back/);
  });

  it("its sink grows with the root of the weight; less with a propeller that turns, which drags less the faster it is blown", () => {
    const growth = (change: Parameters<typeof single>[0]) => {
      const set = of({ ...change, lead: "± 20 g" }).sets[0];
      const [sink, mass] = [set.value("flight.power_off.sink_rate")!, set.value("mass.total")!];
      return { set, of: (halfWidth(sink) / sink.value) / (halfWidth(mass) / mass.value) };
    };
    // Curvature over the step by which the slope is found.
    expectNear(growth({ propeller: "folding = yes" }).of, 0.5, 1e-3);
    const turning = growth({});
    const { model: { air }, table, performance } = turning.set.facts.flight!;
    const { speed, loadFactor } = performance!.sink!;
    const [nose] = settle(turning.set.design.powerplants);
    const drag = (v: number) => (deadPropellerDrag(nose, { speed: v, air }).area * air.density * v ** 2) / 2;
    const share = drag(speed) / (drag(speed) + table.drag(speed, loadFactor)!);
    const power = Math.log(drag(1.05 * speed) / drag(speed)) / Math.log(1.05);
    // Growth of the sink: ½ (of the speed) + half of what the propeller's drag grows by more than as the square. A line for a curve, and the
    // area between its eight speeds: 5 %.
    expectNear(turning.of, (1 + share * (power - 2)) / 2, 0.05);
  });

  it("absent with a reason", () => {
    const set = of({ motor: false }).sets[0];
    expect(set.get("flight.power_off.glide_ratio")).toBeUndefined();
    expect(absenceOf("flight.power_off.glide_ratio", set)).toMatch(/no powerplant.*flight\.glide_ratio/);
    expect(absenceOf("flight.power_off.sink_rate", set)).toMatch(/flight\.sink_rate/);
    expect(absenceOf("flight.power_off.sink_rate", of({ propeller: false }).sets[0])).toMatch(/nose has no propeller/);
  });
});
