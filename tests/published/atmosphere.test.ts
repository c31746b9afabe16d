import { describe, expect, it } from "vitest";
import { atmosphere, densityAltitude, geopotentialAltitude } from "../../server/compute/atmosphere/atmosphere";
import { expectNear } from "./near";

// ISO 2533:1975 Standard Atmosphere, evaluated from its formulas and constants. The constants are exact: 0.01 % leaves room
// for the six printed digits only.
const rounding = 1e-4;

const standard: readonly (readonly [altitude: number, T: number, p: number, density: number, sound: number, viscosity: number])[] = [
  [0, 288.15, 101_325, 1.225, 340.294, 1.78938e-5],
  [500, 284.9, 95_460.8, 1.167269, 338.37, 1.77366e-5],
  [1000, 281.65, 89_874.6, 1.111643, 336.434, 1.75785e-5],
  [2000, 275.15, 79_495.2, 1.00649, 332.529, 1.72596e-5],
  [3000, 268.65, 70_108.5, 0.909122, 328.578, 1.69372e-5],
  [11_000, 216.65, 22_632, 0.363918, 295.069, 1.42161e-5],
  [geopotentialAltitude(3000), 268.659, 70_121.1, 0.909254, 328.584, 1.69376e-5],
];

describe("standard atmosphere, ISO 2533", () => {
  it.each(standard)("at %d m", (altitude, T, p, density, sound, viscosity) => {
    const air = atmosphere({ altitude })!;
    expectNear(air.temperature, T, rounding);
    expectNear(air.pressure, p, rounding);
    expectNear(air.density, density, rounding);
    expectNear(air.speedOfSound, sound, rounding);
    expectNear(air.viscosity, viscosity, rounding);
  });

  it("takes a measured temperature: 35 °C at the pressure of 500 m, and 40 °C at sea level", () => {
    const hot = atmosphere({ altitude: 500, temperature: 308.15 })!;
    expectNear(hot.density, 1.0792, rounding);
    expect(Math.abs(densityAltitude(hot.density) - 1300.5)).toBeLessThan(1); // metres, as printed
    const hotter = atmosphere({ altitude: 0, temperature: 313.15 })!;
    expectNear(hotter.density, 1.1272, rounding);
    expect(Math.abs(densityAltitude(hotter.density) - 858.2)).toBeLessThan(1);
  });

  it("takes a measured pressure, whatever the altitude", () => {
    const air = atmosphere({ altitude: 1500, pressure: 95_460.8, temperature: 284.9 })!;
    expectNear(air.density, 1.167269, rounding);
  });

  it("gives the Reynolds number of 0.23333 m at 15 m/s", () => {
    const air = atmosphere({ altitude: 0 })!;
    expectNear((15 * 0.23333 * air.density) / air.viscosity, 2.396e5, 3e-4); // four printed digits
  });

  it("has no air at impossible readings", () => {
    expect(atmosphere({ altitude: 0, temperature: 0 })).toBeUndefined();
    expect(atmosphere({ altitude: Number.NaN })).toBeUndefined();
    expect(atmosphere({ altitude: 0, pressure: -1 })).toBeUndefined();
  });
});
