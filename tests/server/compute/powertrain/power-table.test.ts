import { expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { flightPower } from "../../../../server/compute/powertrain/in-flight";
import { powerTableSteps } from "../../../../server/compute/powertrain/power-table";
import { thinAirSteps } from "../../../../server/compute/powertrain/thin-air";
import { finished } from "../finished";
import type { Powerplant, Source } from "../../../../server/model/design/power";

const rpm = (Math.PI * 2) / 60;
const plant = (path: string, right: number): Powerplant => ({
  path, hub: [0, right, 0], thrustAxis: [-1, 0, 0], pusher: false, source: "pack",
  motor: { kv: 800 * rpm, resistance: 0.04, noLoadCurrent: 1.2, gearRatio: 1 },
  propeller: { diameter: 0.28, pitch: 0.15, blades: 2, family: "thin", folding: false, clockwise: right > 0 },
});
const sources: Source[] = [{ path: "pack", wired: "single", packs: [{ path: "pack", cells: 4, parallel: 1, chemistry: "lipo", capacity: 4 * 3600, usable: 0.8 }] }];
const air = atmosphere({ altitude: 0 })!;
const power = flightPower({ powerplants: [plant("left", -0.3), plant("right", 0.3)], sources, air, state: "nominal" })!;
const table = finished(powerTableSteps(power, 0, 40));

it("a table of powerplants is close to the running points themselves, between its places too", () => {
  const rest = power.thrust(0);
  for (let speed = 0; speed <= 40; speed += 3.3) {
    expect(Math.abs(table.thrust(speed)! - power.thrust(speed))).toBeLessThan(0.005 * rest);
    for (const share of [0.1, 0.25, 0.5, 0.9]) {
      const thrust = share * power.thrust(speed);
      if (!(thrust > 0)) continue;
      const exact = power.electricPower(thrust, speed)!;
      expect(Math.abs(table.electricPower(thrust, speed)! / exact - 1), `${speed} m/s, ${share} of full thrust`).toBeLessThan(0.02);
    }
  }
});

it("says nothing of more thrust than there is, or of other speeds", () => {
  expect(table.electricPower(1.01 * power.thrust(10), 10)).toBeUndefined();
  expect(table.thrust(41)).toBeUndefined();
  expect(power.electricPower(1.01 * power.thrust(10), 10)).toBeUndefined();
});

it("the run that gives a thrust gives just that thrust", () => {
  const throttle = power.throttleFor(3, 12)!;
  // Throttle is found to 1e-4 of its way.
  expect(Math.abs(power.thrust(12, throttle) - 3)).toBeLessThan(1e-3 * power.thrust(12));
});

it("thrust in thinner air is close to that of the running points in it, between its places too", () => {
  const rest = power.thrust(0);
  const thrustIn = (density: number) => flightPower({ powerplants: [plant("left", -0.3)], sources, air: { ...air, density }, state: "nominal" })!.thrust;
  const thin = finished(thinAirSteps(thrustIn, air.density, 40));
  for (const density of [0.3639, 0.41, 0.6, 0.87, 1.1, air.density]) {
    const exact = thrustIn(density);
    for (let speed = 0; speed <= 40; speed += 3.7) {
      expect(Math.abs(thin(density)(speed) - exact(speed)), `${density} kg/m³, ${speed} m/s`).toBeLessThan(0.002 * rest);
    }
  }
});
