import { expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import type { PlantRun } from "../../server/compute/powertrain/plant-run";
import { runAt, type SourceRun } from "../../server/compute/powertrain/run-at";
import { interpolate } from "../../server/compute/propeller/blade-types";
import { coefficientLoad } from "../../server/compute/propeller/propeller-at";
import type { PropellerFlow } from "../../server/compute/propeller/propeller-map";
import type { Powerplant } from "../../server/model/design/power";
import { propellerOf, rpm } from "./propeller-data";

// The motor, pack and controller of static-thrust.test.ts, moving. Between standing still and there the propeller's
// coefficients run straight through points of apce_10x7 at 6519 and 6531 rpm (UIUC Propeller Database, vol. 1): those on
// either side of each result.
const advance = [0, 0.245, 0.265, 0.353, 0.374, 0.397, 0.486, 0.507];
const thrusts = [0.1139, 0.1009, 0.0993, 0.0913, 0.0891, 0.0865, 0.0717, 0.0679];
const powers = [0.0512, 0.0537, 0.0537, 0.0538, 0.0537, 0.0536, 0.0502, 0.049];

const air = { ...atmosphere({ altitude: 0 })!, density: 1.225 };
const diameter = 0.254;
const mapOf = () => ({
  at: ({ rotation, speed }: PropellerFlow) => {
    const at = (2 * Math.PI * speed) / (rotation * diameter);
    return coefficientLoad(interpolate(advance, thrusts, at), interpolate(advance, powers, at), { diameter, rotation, speed, air });
  },
});
const plant: Powerplant = {
  path: "nose", hub: [0, 0, 0], thrustAxis: [-1, 0, 0], pusher: false, source: "pack", propeller: propellerOf(10, 7, "thin"),
  motor: { kv: 1000 * rpm, resistance: 0.04, noLoadCurrent: 1.2, gearRatio: 1 }, controller: { path: "nose.esc", resistance: 0.01 },
};
const pack = { path: "pack", cells: 3, parallel: 1, chemistry: "lipo" as const, capacity: 7920, resistance: 0.018, usable: 0.8 };
const sources = [{ path: "pack", wired: "single" as const, packs: [pack] }];

/** Half a unit of the last printed decimal, and a hair for its own rounding. */
const asPrinted = (value: number, printed: number, decimals: number) =>
  expect(Math.abs(value - printed)).toBeLessThan(0.5001 * 10 ** -decimals);

// Worked out by hand from these straight lines.
it.each([
  [0, 9538.94, 0, 29.1332, 14.6789, 266.453, 0, 320.337, 0],
  [10, 9473.45, 0.24935, 30.0963, 12.7813, 273.748, 0.4669, 330.405, 0.38684],
  [15, 9473.46, 0.37402, 30.0962, 11.3253, 273.747, 0.62057, 330.405, 0.51416],
  [20, 9576.84, 0.49332, 28.5758, 9.1419, 262.174, 0.6974, 314.495, 0.58137],
])("at %d m/s", (speed, turns, ratio, current, thrust, shaftPower, efficiency, terminalPower, overall) => {
  const { powerplants, sources: [fed] } = runAt({ powerplants: [plant], sources, air, state: 0.5, speed, mapOf });
  const run = powerplants[0] as PlantRun;
  asPrinted(run.rotation / rpm, turns, 2);
  asPrinted(run.propeller!.advanceRatio, ratio, 5);
  asPrinted(run.motorCurrent, current, 4);
  asPrinted(run.thrust, thrust, 4);
  asPrinted(run.shaftPower, shaftPower, 3);
  asPrinted(run.propeller!.efficiency, efficiency, 5);
  asPrinted((fed as SourceRun).power, terminalPower, 3);
  asPrinted(run.efficiency * run.propeller!.efficiency, overall, 5);
});
