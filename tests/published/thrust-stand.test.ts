import { describe, expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { motorAt } from "../../server/compute/motor/motor";
import { propellerAt } from "../../server/compute/propeller/propeller-at";
import { bracketedRoot } from "../../server/compute/root";
import { standardGravity } from "../../server/compute/constants";
import { expectNear } from "./near";
import { propellerOf, rpm } from "./propeller-data";

// Multi-robot Systems Group, Czech Technical University in Prague, public page of motor tests: full throttle, volts and current as the
// controller tells them, thrust in gram-force. Own transcription.
type Run = readonly [diameter: number, pitch: number, volts: number, current: number, turns: number, thrust: number];
const runs780: readonly Run[] = [
  [11, 4.7, 15.95, 24.17, 8951, 1876], [11, 5.5, 15.91, 22.97, 9168, 1576], [11, 5, 16.02, 23.53, 9159, 1538], [10, 4.5, 16.26, 19.88, 9836, 1546],
];
const runs320: readonly (readonly [volts: number, current: number, turns: number, resistance: number])[] = [[24.41, 21.62, 5832, 0.286], [24.52, 15.49, 6376, 0.297]];

/** Turns of a motor that takes this current at these volts. No-load current is in it. */
const turnsOf = (kv: number, resistance: number, volts: number, current: number) =>
  bracketedRoot((w) => motorAt({ kv: kv * rpm, resistance, noLoadCurrent: 0 }, volts, w).current - current, 0, 2 * kv * rpm * volts, 1e-6)! / rpm;

describe("motors of a thrust stand", () => {
  it.each(runs780)("780 rpm/V with %d × %d in: 781 rpm/V and 0.1833 ohm, controller included, give its rpm", (_, __, volts, current, turns) => {
    expectNear(turnsOf(781, 0.1833, volts, current), turns, 0.0055); // half a percent, one digit: what a free fit of both leaves
  });

  it.each(runs320)("320 rpm/V at %d V and %d A", (volts, current, turns, resistance) => {
    expectNear(turnsOf(320, resistance, volts, current), turns, 0.005); // three digits of resistance
  });
});

// The same group's propellers, of makes unknown, at an air density not said (1.2 kg/m³ ± 3 %): those of which the runs are
// consistent pull between what thin and slow-flight blades of their size do, give or take 5 % for density and cell.
describe("propellers of a thrust stand", () => {
  const air = { ...atmosphere({ altitude: 0 })!, density: 1.2 };
  it.each<readonly [number, number, number, number]>([[11, 4.7, 8951, 1876], [10, 4.5, 9836, 1546], [9.4, 5, 9068, 1024], [9.4, 5, 8956, 997]])(
    "%d × %d in at %d rpm", (diameter, pitch, turns, grams) => {
      const pull = (type: "thin" | "wide") => propellerAt({ propeller: propellerOf(diameter, pitch, type), rotation: turns * rpm, speed: 0, air }).thrust;
      const thrust = (grams / 1000) * standardGravity;
      expect(thrust).toBeGreaterThan(0.95 * pull("thin"));
      expect(thrust).toBeLessThan(1.05 * pull("wide"));
    });
});
