import { describe, expect, it } from "vitest";
import { motorAt, mostEfficient, mostPowerful, noLoadRotation, stalled } from "../../server/compute/motor/motor";
import { bracketedRoot } from "../../server/compute/root";
import { references } from "../references";
import { expectNear } from "./near";
import { mean, rpm, textTable } from "./propeller-data";

// M. Drela, First-Order DC Electric Motor Model, MIT, 2007: its equations worked by hand, two ways. Six printed digits: half a unit
// of the last.
const motor = { kv: 1000 * rpm, resistance: 0.04, noLoadCurrent: 1.2 };
const digits = 5e-6;

describe("a motor of 1000 rpm/V, 40 mohm and 1.2 A at 11.1 V", () => {
  it("at 9000 rpm", () => {
    const point = motorAt(motor, 11.1, 9000 * rpm);
    expectNear(point.current, 52.5, digits);
    expectNear(point.torque, 0.489879, digits);
    expectNear(point.shaftPower, 461.7, digits);
    expectNear(point.electricPower, 582.75, digits);
    expectNear(point.efficiency, 0.792278, digits);
    expectNear(point.copperLoss, 110.25, digits);
    expectNear(point.noLoadLoss, 10.8, digits);
  });

  it("at 10,000 rpm", () => {
    const point = motorAt(motor, 11.1, 10_000 * rpm);
    expectNear(point.current, 27.5, digits);
    expectNear(point.torque, 0.251147, digits);
    expectNear(point.shaftPower, 263, digits);
    expectNear(point.efficiency, 0.861589, digits);
  });

  it("free, held, at its most efficient and at its most powerful", () => {
    expectNear(noLoadRotation(motor, 11.1) / rpm, 11_052, digits);
    expectNear(stalled(motor, 11.1).current, 277.5, digits);
    expectNear(stalled(motor, 11.1).torque, 2.638471, digits);
    const best = mostEfficient(motor, 11.1);
    expectNear(best.efficiency, 0.872805, digits);
    expectNear(best.current, 18.2483, digits);
    expectNear(best.rotation / rpm, 10_370.07, digits);
    const most = mostPowerful(motor, 11.1);
    expectNear(most.shaftPower, 763.417, digits);
    expectNear(most.current, 139.35, digits);
  });

  it("turns nothing under the voltage of its no-load current", () => {
    expect(noLoadRotation(motor, 0.03)).toBe(0);
  });
});

// P. Cao and J. Strawson, thrust-stand measurements, 2018: twelve small motors, each with many propellers at two voltages.
// One kv and one resistance (controller included) fit all runs of a motor within 0.5 to 2.3 % rms of rpm, so those found from
// half the propellers, at both voltages, must foretell the rest within 3 % rms.
const stand = "stand_5in_full_throttle.csv";
describe.runIf(references("propellers", stand))("thrust-stand runs", () => {
  const runs = (references("propellers", stand) ? textTable(stand)! : []).map((row) => ({
    motor: row[0], volts: Number(row[7]), current: Number(row[8]), rotation: Number(row[9]) * rpm,
  }));
  it.each([...new Set(runs.map((run) => run.motor))])("motor %s", (name) => {
    const own = runs.filter((run) => run.motor === name);
    const found = fitted(own.filter((_, i) => i % 4 < 2));
    const errors = own.filter((_, i) => i % 4 >= 2).map(({ volts, current, rotation }) => {
      const off = (x: number) => motorAt({ ...found, noLoadCurrent: 0 }, volts, x).current - current;
      return bracketedRoot(off, 0, 2 * rotation, 1e-6)! / rotation - 1;
    });
    expect(Math.sqrt(mean(errors.map((e) => e * e)))).toBeLessThan(0.03);
  });
});

/** Least squares of rotation over volts and current. */
function fitted(runs: readonly { volts: number; current: number; rotation: number }[]) {
  const sum = (f: (run: (typeof runs)[number]) => number) => runs.reduce((total, run) => total + f(run), 0);
  const [vv, vi, ii] = [sum((r) => r.volts ** 2), sum((r) => r.volts * r.current), sum((r) => r.current ** 2)];
  const [vr, ir] = [sum((r) => r.volts * r.rotation), sum((r) => r.current * r.rotation)];
  const whole = vv * ii - vi * vi;
  const kv = (vr * ii - ir * vi) / whole;
  const slope = (ir * vv - vr * vi) / whole;
  return { kv, resistance: -slope / kv };
}
