import { describe, expect, it } from "vitest";
import { camberSlopes } from "../../../server/compute/lattice/camber";
import { sectionsAir } from "../../../server/compute/section-air/sections-air";
import { resolved } from "./resolved";

const degree = Math.PI / 180;
const table = ["re;angle_deg;cl;cd;cm", ...[-6, -4, -2, 0, 2, 4, 6, 8, 10, 12, 14].map((angle) =>
  `120000;${angle};${(0.1 * (angle + 3) - 0.02 * Math.max(0, angle - 8) ** 2).toFixed(3).replace(".", ",")};0,0${14 + Math.abs(angle)};-0,06`)].join("\n");

const design = (foil: string) => resolved(`foil root { ${foil} }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = root ; weight = 90 g ; panel half { span = 400 mm ; chord = 200 mm } }`, { "root.csv": table });
const sectionOf = (foil: string) => design(foil).surface("main").halves[0].panels[0].inner.section;

describe("a foil with a measured table", () => {
  it.each(['polar = "root.csv"', 'shape = naca("4412") ; polar = "root.csv"'])("%s: flies by the table", (foil) => {
    expect(design(foil).mistakes()).toEqual([]);
    const air = sectionsAir(() => "none")(sectionOf(foil), 120e3)!;
    expect(air.origin).toBe("measured");
    expect(air.zeroLiftAngle / degree).toBeCloseTo(-3, 6);
    expect(air.liftSlope * degree).toBeCloseTo(0.1, 6);
    expect(air.liftMax).toBe(1.22);
    expect(air.moment).toBeCloseTo(-0.06, 12);
    expect(air.drag(0.3)).toBeCloseTo(0.014, 12);
    expect(air.liftMin).toBeLessThan(-0.2);
  });

  // The rule over 400 places is right to 1e-4.
  it.each(['polar = "root.csv"', 'shape = naca("0009") ; polar = "root.csv"'])("%s: has its camber in the lattice", (foil) => {
    const rows = 400;
    const slopes = camberSlopes(sectionOf(foil), rows);
    const zeroLift = slopes.reduce((sum, slope, k) => sum + ((k === rows - 1 ? 0.5 : 1) * slope * (1 - Math.cos((Math.PI * (k + 1)) / rows))) / rows, 0);
    expect(zeroLift / degree).toBeCloseTo(-3, 3);
  });

  it("gives way to what is written beside it", () => {
    const section = sectionOf('polar = "root.csv" ; lift_max = 1.2 ; zero_lift_angle = -2 deg ; moment = -0.04');
    const { liftMax, zeroLiftAngle, moment } = sectionsAir(() => "none")(section, 1e5)!;
    expect([liftMax, zeroLiftAngle / degree, moment].map((value) => +value.toFixed(9))).toEqual([1.2, -2, -0.04]);
  });

  it("that can't be read leaves the shape as it is", () => {
    const section = sectionOf('shape = naca("4412") ; polar = "wrong.csv"');
    expect([section.shape, section.polar]).toEqual([{ type: "naca", digits: "4412" }, undefined]);
  });
});

it("a lift limit alone is one of the section's values", () => {
  expect(sectionOf('shape = naca("4412") ; lift_max = 1.25').liftMax).toBe(1.25);
});
