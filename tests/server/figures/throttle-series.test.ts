import { describe, expect, it } from "vitest";
import { analyseFile, analyseStill } from "../../service";
import { expectNear } from "../../published/near";

const plant = (more = "") => `airframe { class = sport }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-100 mm, 100 mm, 0 mm) ; battery = pack ${more}
  motor { kv = 1100 rpm/V ; resistance = 60 mohm ; no_load_current = 0.9 A ; weight = 75 g }
  propeller { diameter = 9 in ; pitch = 5.5 in ; weight = 18 g }
}`;

describe("power.throttle", () => {
  const seriesOf = (analysis: ReturnType<typeof analyseStill>) => analysis.sets[0].series().find(({ name }) => name === "power.throttle");

  it("ends standing at the figures of full throttle, and rises to them", () => {
    const analysis = analyseStill(plant());
    const { x, lines } = seriesOf(analysis)!;
    expect([x.values[0], x.values.at(-1)]).toEqual([0.05, 1]);
    expect(lines.map(({ title }) => title)).toEqual(["Thrust, standing", "Current, standing", "Power, standing", "Efficiency, standing", "Rpm, standing"]);
    for (const [i, name] of ["static_thrust", "static_current", "static_power", "efficiency", "static_rpm"].entries()) {
      const { values } = lines[i];
      expectNear(values.at(-1)!, analysis.sets[0].value(`power.${name}`)!.value, 1e-9);
      if (name === "efficiency") continue;
      for (let j = 1; j < values.length; j++) expect(values[j]!).toBeGreaterThan(values[j - 1]!);
    }
  });

  it("tells how fast each of several turns, and has nothing without a powerplant or with a broken one", () => {
    expect(seriesOf(analyseStill(plant("; mirror = yes")))!.lines.map(({ title }) => title).slice(4)).toEqual(["Rpm of nose.right, standing", "Rpm of nose.left, standing"]);
    expect(seriesOf(analyseStill("item all { weight = 1 kg ; at = (0 mm, 0 mm, 0 mm) }"))).toBeUndefined();
    expect(seriesOf(analyseStill(plant().replace("kv = 1100 rpm/V ; ", "")))).toBeUndefined();
  });

  it("in flight gives the drag at the throttle that level flight takes, and less thrust at full", () => {
    const analysis = analyseFile("samples", "plover.airframe");
    const { lines, x } = seriesOf(analysis)!;
    expect(lines.map(({ title }) => title.split(", ")[1])).toEqual([...Array<string>(5).fill("standing"), ...Array<string>(5).fill("at cruise")]);
    const { facts } = analysis.sets[0];
    const { speed } = facts.flight!.points.cruise;
    const drag = facts.flight!.table.drag(speed)!;
    const throttle = facts.flight!.power!.throttleFor(drag, speed)!;
    const [standing, flying] = [lines[0].values as number[], lines[5].values as number[]];
    const after = x.values.findIndex((value) => value! > throttle);
    expect(flying[after - 1]).toBeLessThan(drag);
    expect(flying[after]).toBeGreaterThan(drag);
    expect(flying.at(-1)!).toBeLessThan(standing.at(-1)!);
  });
});
