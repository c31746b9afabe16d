import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensions, type Dimension, type DimensionName } from "../../../grammar/units/dimension";
import { display, displayValue, inUnit, otherUnits, type Style, type System } from "../../../grammar/units/display";
import { quantity } from "../../../grammar/units/quantity";
import { compoundOf } from "../../../grammar/units/units";

const banded = (value: number, dimension: Dimension, half: number) => quantity(value, dimension, new Map([["a", half]]));

const rpm = Math.PI / 30;

describe("unit and rounding for people", () => {
  it.each<[string, number, DimensionName, System, Style?]>([
    ["312 mm", 0.312, "length", "metric"],
    ["24.6 mm", 0.02461, "length", "metric"],
    ["0.8 mm", 0.0008, "length", "metric"],
    ["1520 mm", 1.52, "length", "metric"],
    ["60 in", 1.524, "length", "imperial"],
    ["34 m", 34.04, "length", "metric", "distance"],
    ["8.2 km", 8230, "length", "metric", "distance"],
    ["418 g", 0.418, "mass", "metric"],
    ["1.24 kg", 1.2412, "mass", "metric"],
    ["5.7 kg", 5.704, "mass", "metric"],
    ["14.7 oz", 0.418, "mass", "imperial"],
    ["2.74 lb", 1.2412, "mass", "imperial"],
    ["62 g/dm^2", 6.2, "areal_density", "metric"],
    ["21 oz/ft^2", 6.4, "areal_density", "imperial"],
    ["60 g/m^2", 0.06, "areal_density", "metric"],
    ["8.1 kg/m^3", 8.1, "density", "metric"],
    ["8.1 oz/ft^3", 8.11, "density", "imperial"],
    ["1.24 g/cm^3", 1240, "density", "metric"],
    ["780 rpm/V", 780 * rpm, "motor_constant", "metric"],
    ["8912 rpm", 8912.4 * rpm, "rotation", "metric"],
    ["120 deg/s", (120 * Math.PI) / 180, "rotation", "metric"],
    ["8.2 %", 0.082, "ratio", "metric", "share"],
    ["0.63", 0.634, "ratio", "metric", "number"],
    ["21.4 N", 21.4, "force", "metric"],
    ["3.2 kgf*cm", 0.3138128, "torque", "metric"],
    ["59 Wh", 59 * 3600, "energy", "metric", "energy"],
    ["12.3 min", 738, "time", "metric"],
    ["25 degC", 298.15, "temperature", "metric"],
    ["77 degF", 298.15, "temperature", "imperial"],
    ["38 mohm", 0.038, "resistance", "metric"],
    ["4000 mAh", 14400, "charge", "metric"],
    ["-2 deg", (-2 * Math.PI) / 180, "angle", "metric"],
    ["0 mm", -1e-12, "length", "metric"],
    ["10 m/s", 9.996, "speed", "metric"],
    ["4.92 /rad", 4.92, "per_angle", "metric"],
  ])("%s", (text, si, dimension, system, style) => expect(displayValue(si, dimensions[dimension], system, style).text).toBe(text));

  it("gives the value in its unit, not rounded", () => {
    const shown = displayValue(0.31246, dimensions.length, "metric");
    expect(shown).toMatchObject({ text: "312 mm", unit: "mm" });
    // One division: a rounding or two of a double.
    expect(Math.abs(shown.value - 312.46)).toBeLessThan(1e-12);
  });

  it("shows a dimension without a name in SI base units", () => {
    expect(displayValue(3, [3, 0, -1, 0, 0, 0], "metric").text).toBe("3 m^3*s^-1");
  });

  it("passes over a wanted style of another dimension", () => {
    expect(displayValue(0.312, dimensions.length, "metric", "share").text).toBe("312 mm");
  });

  it("refuses a unit that doesn't exist", () => expect(() => inUnit(quantity(1, dimensions.length), "furlong")).toThrow("no unit furlong"));

  it("says so when there is no number", () => expect(displayValue(NaN, dimensions.length, "metric").text).toBe("unknown"));
});

describe("bands", () => {
  it.each<[string, number, number, DimensionName, Style?]>([
    ["312 mm ± 4 mm", 0.312, 0.0041, "length"],
    ["1.24 kg ± 0.06 kg", 1.2412, 0.0634, "mass"],
    ["312 mm ± 15 mm", 0.3124, 0.0152, "length"],
    ["310 mm ± 100 mm", 0.3124, 0.0996, "length"],
    ["312 mm ± 24 mm", 0.3124, 0.0242, "length"],
    ["8.2 % ± 1.4 %", 0.0821, 0.0138, "ratio", "share"],
    ["25 degC ± 2 degC", 298.15, 2, "temperature"],
    ["1500 W ± 300 W", 1520, 300, "power"],
    ["0.0 mm ± 0.5 mm", 0, 0.0005, "length"],
  ])("%s", (text, value, half, dimension, style) => {
    expect(display(banded(value, dimensions[dimension], half), "metric", style).text).toBe(text);
  });

  it("leaves out a band too narrow to read", () => {
    expect(display(banded(0.312, dimensions.length, 1e-7), "metric").text).toBe("312 mm");
  });

  it("shows value and band to the same place, with at most two digits of the band", () => {
    // A half-width from a thousandth of the value to all of it.
    fc.assert(fc.property(fc.double({ min: 1e-3, max: 9, noNaN: true }), fc.double({ min: 1e-3, max: 1, noNaN: true }), (value, share) => {
      const { text } = display(banded(value, dimensions.length, value * share), "metric");
      const [left, right] = text.split(" ± ").map((part) => part.split(" ")[0]);
      expect(right.replace(/^0\.?0*/, "").replace(".", "").replace(/0+$/, "").length).toBeLessThanOrEqual(2);
      expect(left.split(".")[1]?.length).toBe(right.split(".")[1]?.length);
      // One digit of 3 and up is off by at most half in 3, two digits from 1 up by at most half in 10.
      expect(Math.abs(Number(right) / (value * share * 1000) - 1)).toBeLessThanOrEqual(0.5 / 2);
    }));
  });
});

describe("what is shown", () => {
  it("is off by at most one part in a hundred", () => {
    // Two digits from 5.0 up, three below: half a step in 50 is the worst. Loadings and speeds of rotation are whole.
    fc.assert(fc.property(fc.double({ min: 1e-5, max: 1e5, noNaN: true }), (si) => {
      for (const dimension of ["length", "mass", "force", "voltage", "time", "pressure"] as const) {
        const { text, value } = displayValue(si, dimensions[dimension], "metric");
        // Six decimals are the most: what is under a thousandth of its unit is noise.
        if (value < 1e-3) continue;
        expect(Math.abs(Number(text.split(" ")[0]) - value)).toBeLessThanOrEqual(value * 0.010001);
      }
    }));
  });

  it("is a unit the language reads", () => {
    for (const [name, dimension] of Object.entries(dimensions)) {
      for (const system of ["metric", "imperial"] as const) {
        for (const si of [1e-4, 1e-2, 1, 1e3, 1e7]) {
          const { unit, value } = displayValue(si, dimension, system);
          const found = unit === "" ? { dimension: dimensions.ratio, scale: 1, offset: 0 } : compoundOf(unit)!;
          expect(found.dimension, name).toEqual(dimension);
          // The same factor there and back: a few roundings.
          expect(Math.abs(value * found.scale + found.offset - si)).toBeLessThanOrEqual(1e-13 * Math.max(si, found.offset));
        }
      }
    }
  });
});

describe("other units", () => {
  const of = (si: number, dimension: DimensionName, except?: string, style?: Style) => otherUnits(quantity(si, dimensions[dimension]), except, style);

  it("gives the value in the other units people use", () => {
    expect(of(0.165, "length")).toEqual(["16.5 cm", "6.50 in"]);
    expect(of(0.0254, "length", "in")).toEqual(["25.4 mm", "2.54 cm"]);
    expect(of(16, "speed")).toEqual(["57.6 km/h", "31.1 kt", "35.8 mph", "52.5 ft/s"]);
    expect(of(298.15, "temperature")).toEqual(["298 K", "77.0 degF"]);
    expect(of(200, "energy", undefined, "energy")).toEqual([]);
  });

  it("gives none of a plain number", () => expect(of(0.24, "ratio")).toEqual([]));
});
