import { describe, expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { driveAt } from "../../server/compute/powertrain/drive";
import type { PlantRun } from "../../server/compute/powertrain/plant-run";
import { solveStatic, type SourceRun } from "../../server/compute/powertrain/solve-static";
import { coefficientLoad } from "../../server/compute/propeller/propeller-at";
import { bracketedRoot } from "../../server/compute/root";
import type { Powerplant } from "../../server/model/design/power";
import { standardGravity } from "../../server/compute/constants";
import { expectNear } from "./near";
import { propellerOf, rpm } from "./propeller-data";

// M. Drela, First-Order DC Electric Motor Model, MIT, 2007, with a propeller of constant CP 0.0512 and CT 0.1139, 0.254 m, in air of
// 1.225 kg/m³: worked by hand, two ways (rpm from k rpm² + Kt/(R Kv) rpm − Kt (V/R − I0) = 0). Six printed digits: half a
// unit of the last.
const air = { ...atmosphere({ altitude: 0 })!, density: 1.225 };
const load = (rotation: number) => coefficientLoad(0.1139, 0.0512, { diameter: 0.254, rotation, speed: 0, air });
const motor = { kv: 1000 * rpm, resistance: 0.04, noLoadCurrent: 1.2, gearRatio: 1 };
const digits = 5e-6;

describe("motor and propeller", () => {
  it("at 11.1 V", () => {
    const { load: run, motor: point } = driveAt({ motor, gearRatio: 1, load, controllerResistance: 0, leadResistance: 0 }, 11.1, 1);
    expectNear(point.rotation / rpm, 9858.54, digits);
    expectNear(point.current, 31.0364, digits);
    expectNear(point.torque, 0.284917, digits);
    expectNear(point.shaftPower, 294.143, digits);
    expectNear(point.electricPower, 344.504, digits);
    expectNear(point.efficiency, 0.853817, digits);
    expectNear(run!.thrust, 15.679, digits);
    expectNear(run!.figureOfMerit, 0.59904, digits);
  });

  it("the same through a gear: half the turns of a motor of twice the kv", () => {
    const geared = { motor: { ...motor, kv: 2 * motor.kv }, gearRatio: 2, load, controllerResistance: 0, leadResistance: 0 };
    const { load: run, motor: point } = driveAt(geared, 11.1, 1);
    expectNear(point.rotation / rpm, 2 * 9858.54, digits);
    expectNear(run!.thrust, 15.679, digits);
  });

  it("from a pack of three cells of 3.84 V and 6 mohm, leads of 4 and controller of 6 mohm, at 0.6 throttle", () => {
    const drive = { motor, gearRatio: 1, load, controllerResistance: 0.006, leadResistance: 0.004 };
    const volts = bracketedRoot((v) => 11.52 - 0.018 * driveAt(drive, v, 0.6).current - v, 0, 11.52, 1e-10)!;
    const { load: run, motor: point, current } = driveAt(drive, volts, 0.6);
    expectNear(point.rotation / rpm, 6209.13, digits);
    expectNear(point.current, 13.0354, digits);
    expectNear(current, 7.82123, digits);
    expectNear(volts, 11.3792, digits);
    expectNear(run!.thrust, 6.21948, digits);
    expectNear(point.shaftPower, 73.4875, digits);
    expectNear(volts * current, 88.9995, digits);
  });
});

const plant = (over: Partial<Powerplant> = {}): Powerplant => ({
  path: "nose", hub: [0, 0, 0], thrustAxis: [-1, 0, 0], pusher: false, source: "pack", motor,
  propeller: propellerOf(10, 7, "thin"), controller: { path: "nose.esc", resistance: 0.01 }, ...over,
});

describe("pack, leads, controller, motor, propeller at full throttle", () => {
  // Half charged, the cell's table says 3.84 V. The controller's resistance counts its leads in: 6 + 4 mohm.
  const pack = { path: "pack", cells: 3, parallel: 1, chemistry: "lipo" as const, capacity: 7920, resistance: 0.018, usable: 0.8 };
  const sources = [{ path: "pack", wired: "single" as const, packs: [pack] }];

  it("one motor", () => {
    const { powerplants: [run], sources: [source] } = solveStatic({ powerplants: [plant()], sources, air, state: 0.5, mapOf: () => ({ at: ({ rotation }) => load(rotation) }) });
    const one = run as PlantRun;
    expectNear(one.rotation / rpm, 9538.94, digits);
    expectNear(one.motorCurrent, 29.1332, digits);
    expectNear((source as SourceRun).volts, 10.9956, digits);
    expectNear(one.motorVolts, 10.7043, digits);
    expectNear(one.shaftPower, 266.453, digits);
    expectNear(one.thrust, 14.6789, digits);
    expectNear(one.efficiency, 0.83179, digits);
    expectNear(one.electricPower, 320.337, digits);
  });

  it("three motors on one pack of a third the resistance run like one on its own", () => {
    const thirds = [{ ...sources[0], packs: [{ ...pack, resistance: 0.006 }] }];
    const powerplants = ["a", "b", "c"].map((path) => plant({ path }));
    const { powerplants: runs, sources: [source] } = solveStatic({ powerplants, sources: thirds, air, state: 0.5, mapOf: () => ({ at: ({ rotation }) => load(rotation) }) });
    for (const run of runs as readonly PlantRun[]) expectNear(run.thrust, 14.6789, digits);
    expectNear((source as SourceRun).current, 3 * 29.1332, digits);
    expectNear((source as SourceRun).volts, 10.9956, digits);
  });
});

// Common practice, no source: a pair of 580 rpm/V on four cells with 14 in propellers pulls a little over 60 N together and
// holds up a 5.7 kg model just over its weight. Such figures are pulled with a pack just charged. Which 14 in propeller and how
// good a motor is not said: all of a plausible range, from 7 to 8.5 in pitch, 30 to 45 mohm and 5 to 8 Ah, must come out between
// 58 and 72 N, and the middle of it between 60 and 66.
describe("a pair of 580 rpm/V on four cells with 14 in propellers, just charged", () => {
  const pull = (pitch: number, resistance: number, capacity: number, state: "full" | "nominal" = "full") => {
    const own = { motor: { kv: 580 * rpm, resistance, noLoadCurrent: 1.3, gearRatio: 1 }, propeller: propellerOf(14, pitch, "thin"), controller: undefined };
    const pack = { path: "pack", cells: 4, parallel: 1, chemistry: "lipo" as const, capacity: capacity * 3600, usable: 0.8 };
    const { powerplants } = solveStatic({
      powerplants: [plant({ path: "left", ...own }), plant({ path: "right", ...own })],
      sources: [{ path: "pack", wired: "single", packs: [pack] }], air: atmosphere({ altitude: 0 })!, state,
    });
    return (powerplants as readonly PlantRun[]).reduce((sum, run) => sum + run.thrust, 0);
  };

  it("pulls a little over 60 N, a little over the weight of 5.7 kg", () => {
    const thrust = pull(7, 0.038, 6);
    expect(thrust).toBeGreaterThan(60);
    expect(thrust).toBeLessThan(66);
    expect(thrust / (5.7 * standardGravity)).toBeGreaterThan(1);
    expect(thrust / (5.7 * standardGravity)).toBeLessThan(1.2);
  });

  it.each([[7, 0.045, 5], [7, 0.03, 8], [8.5, 0.045, 5], [8.5, 0.03, 8]])("%d in pitch, %d ohm, %d Ah", (pitch, resistance, capacity) => {
    const thrust = pull(pitch, resistance, capacity);
    expect(thrust).toBeGreaterThan(58);
    expect(thrust).toBeLessThan(72);
  });

  it("half charged it still holds the model up with the larger pitch and a good motor", () => {
    expect(pull(8.5, 0.03, 8, "nominal") / (5.7 * standardGravity)).toBeGreaterThan(1);
  });

  it("at nominal volts about a seventh less: thrust goes by the square of rotation", () => {
    const share = pull(7, 0.038, 6, "nominal") / pull(7, 0.038, 6);
    expect(share).toBeGreaterThan((3.84 / 4.2) ** 2); // less current, less sag
    expect(share).toBeLessThan(3.84 / 4.2);
  });
});
