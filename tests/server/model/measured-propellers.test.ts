import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../server/compute/atmosphere/atmosphere";
import { propellerMap } from "../../../server/compute/propeller/propeller-map";
import { readPropellerTable } from "../../../server/model/propeller-table/read";
import { expectNear } from "../../published/near";
import { resolved } from "./resolved";

const rpm = Math.PI / 30;
const table = ["# on the stand, and a run on the roof", "rpm, speed [m/s], thrust [gf], power [W], note", "6000, 0, 640, 72, calm", "6000, 9, 410, 66,", "8000, 0, 1150, 168,"].join("\n");
const design = (file: string) => resolved(`battery pack { cells = 4 ; capacity = 4000 mAh ; weight = 400 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant nose { at = (0 mm, 0 mm, 0 mm) ; battery = pack
  motor { kv = 780 rpm/V ; resistance = 38 mohm ; weight = 150 g }
  propeller { diameter = 12 in ; pitch = 6 in ; weight = 27 g ; measured = "own.csv" } }`, { "own.csv": file });

describe("a propeller with a measured table", () => {
  const air = { ...atmosphere({ altitude: 0 })!, density: 1.225 };
  const built = () => design(table).plain().powerplants[0].propeller!;

  it("does what was measured at the points, in their air", () => {
    expect(design(table).mistakes()).toEqual([]);
    const map = propellerMap(built());
    for (const [turns, speed, grams, power] of [[6000, 0, 640, 72], [6000, 9, 410, 66], [8000, 0, 1150, 168]]) {
      const load = map.at({ rotation: turns * rpm, speed, air });
      expectNear(load.thrust, (grams / 1000) * 9.80665, 1e-9);
      expectNear(load.power, power, 1e-9);
    }
  });

  it("goes on from there without a step, and beyond in the shape of the computed", () => {
    const [map, computed] = [propellerMap(built()), propellerMap({ ...built(), measured: undefined })];
    const at = (each: typeof map, speed: number) => each.at({ rotation: 6000 * rpm, speed, air });
    expectNear(at(map, 9 + 1e-9).thrust, at(map, 9 - 1e-9).thrust, 1e-6);
    expectNear(at(map, 20).thrust - at(computed, 20).thrust, at(map, 9).thrust - at(computed, 9).thrust, 1e-9);
    const middle = (at(map, 4.5).thrust - at(computed, 4.5).thrust) * 2;
    expectNear(middle, at(map, 9).thrust - at(computed, 9).thrust + at(map, 0).thrust - at(computed, 0).thrust, 1e-9);
  });

  it("gives as many newtons less in thin air", () => {
    const map = propellerMap(built());
    const [here, high] = [1.225, 0.6125].map((density) => map.at({ rotation: 8000 * rpm, speed: 0, air: { ...air, density } }).thrust);
    expect(high / here).toBeGreaterThan(0.45);
    expect(high / here).toBeLessThan(0.55);
  });

  it("changes the figures that rest on it", () => {
    const doubled = table.replace(/1150, 168/, "2300, 168");
    const thrust = (file: string) => {
      const all = design(file);
      for (const _ of all.analysis.finish()) void _;
      return all.figure("power.static_thrust")!.value;
    };
    expect(thrust(doubled)).toBeGreaterThan(1.5 * thrust(table));
  });
});

describe("what is wrong with a table is said at its name", () => {
  const head = "rpm, speed [m/s], thrust [N], power [W]";
  it.each([
    ["", "holds nothing"],
    [head, "has a header and no points"],
    ["6000, 0, 6, 70", "has no header that names its columns with their units"],
    ["rpm, speed [m/s], thrust [N]\n6000, 0, 6", 'has no column "power [W]" in its header'],
    ["rpm, speed, thrust [N], power [W]\n6000, 0, 6, 70", 'says no unit in its column "speed"; name it speed [m/s]'],
    ["rpm, speed [m/s], thrust [g], power [W]\n6000, 0, 600, 70", 'has a column "thrust [g]" that is no thrust; is it gf?'],
    ["rpm, speed [mps], thrust [N], power [W]\n6000, 0, 6, 70", 'has a column "speed [mps]" in "mps", which is no unit'],
    ["rpm, rpm, speed [m/s], thrust [N], power [W]", "has two columns for rpm"],
    [`${head}\n6000, 0, 6`, 'has no number for "power [W]" on its line 2'],
    [`${head}\n6000, 0, much, 70`, 'has no number for "thrust [N]" on its line 2'],
    [`${head}\n0, 0, 6, 70`, "has an rpm that is not above 0 on its line 2"],
    [`${head}\n6000, -1, 6, 70`, "has a speed below 0 on its line 2"],
    [`${head}\n6000, 0, 6, 0`, "has thrust without power on its line 2"],
    [`${head}\n6000, 0, 6, 70\n\n6000, 0, 7, 70`, "says twice what it does at one rpm and speed: on its lines 2 and 4"],
    [`${head}\n6000, 0, 6, 7, 0`, "has more cells than names of columns on its line 2"],
  ])("%j", (text, fault) => {
    const read = readPropellerTable(text);
    expect("fault" in read && read.fault).toContain(fault);
    expect(design(text).mistakes()).toEqual(['wrong_value at ""own.csv""']);
  });

  it("understands other spellings and units", () => {
    const read = readPropellerTable("Power_kW;RPM;airspeed (km/h);Thrust_lbf;air density [kg/m^3]\n0,07;6000;36;1,5;1,1");
    expect("points" in read && read.points[0]).toEqual({
      rotation: expect.closeTo(200 * Math.PI, 9) as number, speed: expect.closeTo(10, 9) as number, thrust: expect.closeTo(1.5 * 4.4482216152605, 9) as number,
      power: expect.closeTo(70, 9) as number, density: 1.1,
    });
  });
});
