import { describe, expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import { banded, lengthOf, resolved, rounding, weightOf } from "./resolved";

const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(rounding * Math.max(1, Math.abs(b)));

describe("units", () => {
  it.each([
    // Inch and pound: international yard and pound agreement, 1959. g₀: 9.80665 m/s² (3rd CGPM, 1901).
    ["29.1 in", 29.1 * 0.0254], ["2 ft + 3 in", 27 * 0.0254], ["740 mm", 0.74], ["1 m - 26 cm", 0.74], ["-4 mm", -0.004],
    ["2 * (3 mm + 1 cm)", 0.026], ["(30 mm)^2 / 9 mm", 0.1], ["sqrt(9 dm^2)", 0.3], ["abs(-4 mm)", 0.004], ["min(12 mm, 1 in)", 0.012],
    ["max(12 mm, 1 in)", 0.0254], ["round(312.4 mm, 5 mm)", 0.31], ["100 mm * sin(30 deg)", 0.05], ["100 mm * tan(45 deg)", 0.1],
    ["100 mm * cos(1 rad)", 0.1 * Math.cos(1)], ["atan2(1 mm, 1 mm) / 1 rad * 1 m", Math.PI / 4], ["10 m/s * 3 s", 30],
    ["50 %  * 2 m", 1], ["1 km", 1000], ["2^3 * 1 mm", 0.008], ["0", 0],
  ])("%s", (expression, value) => near(lengthOf(expression).value, value));

  it.each([
    ["1 lb", 0.45359237], ["16 oz", 0.45359237], ["75 g/dm^2 * 2 dm^2", 0.15], ["0.72 g/cm^3 * (10 mm)^3", 0.00072],
    ["9.80665 N / 9.80665 m/s^2", 1], ["1 kgf * 1 s^2 / 1 m", 9.80665],
  ])("%s", (expression, value) => near(weightOf(expression).value, value));

  it("degC and degF take the sign of their number, and are kelvins in a difference", () => {
    const at = (temperature: string) => resolved(`air { temperature = ${temperature} }`).plain().field.temperature!;
    near(at("-5 degC"), 268.15);
    near(at("77 degF"), 298.15);
    near(at("20 degC + 5 degC"), 298.15);
    near(at("20 degC - (5 degC)"), 288.15);
    near(at("20 degC - 9 degF"), 288.15);
    const banded = resolved("air { temperature = 20 degC ± 3 degC }").built().field.temperature!;
    near(banded.value, 293.15);
    near(halfWidth(banded), 3);
  });
});

describe("tolerance", () => {
  it.each([
    ["420 g ± 5 g", 0.42, 0.005], ["420 g ± 2 %", 0.42, 0.0084], ["420 g +- 0.2 oz", 0.42, 0.2 * 0.028349523125], ["420 g ± (2 %)", 0.42, 0.0084],
    ["2 * (210 g ± 5 g)", 0.42, 0.01], ["420 g ± -5 g", 0.42, 0.005], ["420 g ± 0 g", 0.42, 0],
    // Independent ones add as squares (JCGM 100:2008, eq. 10).
    ["(200 g ± 3 g) + (220 g ± 4 g)", 0.42, 0.005],
  ])("%s", (expression, value, half) => {
    const [v, h] = banded(weightOf(expression));
    near(v, value);
    near(h, half);
  });

  it.each([
    // A share of the value; only where that is written in % itself, points.
    ["30 ± 5 %", 30, 1.5], ["30 ± 2", 30, 2], ["80 % ± 5 %", 0.8, 0.05], ["-(80 %) * -1 ± 5 %", 0.8, 0.05], ["0.8 ± 5 %", 0.8, 0.04],
    ["share ± 5 %", 0.8, 0.05], ["plain ± loose", 0.8, 0.04],
  ])("of a ratio: %s", (expression, value, half) => {
    const before = "let share = 80 %\nlet plain = 0.8\nlet loose = 5 %\n";
    const text = `${before}battery p { cells = 3 ; capacity = 1 Ah ; at = (0 mm, 0 mm, 0 mm) ; weight = 1 g ; c_rating = ${expression} }`;
    const [v, h] = banded(resolved(text).built().sources[0].packs[0].cRating!);
    near(v, value);
    near(h, half);
  });

  const share = (a: { spread?: ReadonlyMap<string, number> }, b: { spread?: ReadonlyMap<string, number> }) =>
    [...(a.spread?.keys() ?? [])].filter((id) => b.spread?.has(id)).length;

  it("one written ± is one variable through a let, a mirror, a copy and a placing", () => {
    const r = resolved(`
let lead = 40 g ± 4 g
item a { weight = lead ; at = (0 mm, 0 mm, 0 mm) }
item b { weight = 2 * lead ; at = (0 mm, 0 mm, 0 mm) ; mirror = yes }
item c from a { at = (9 mm, 0 mm, 0 mm) }
assembly pod { item d { weight = lead ; at = (0 mm, 1 mm ± 1 mm, 0 mm) } }
place pods from pod { at = (0 mm, 50 mm, 0 mm) ; mirror = yes }`);
    const weights = ["a", "b.right", "b.left", "c", "pods.right.d", "pods.left.d"].map((path) => r.load(path).weight!);
    for (const w of weights) expect(share(weights[0], w)).toBe(1);
    // All together: (1 + 2 + 2 + 1 + 1 + 1) × 4 g, not their root sum of squares.
    near(halfWidth(r.figure("mass.total")!), 8 * 0.004);
    // Both pods shift outward together: the pair balances whatever the place is.
    const [right, left] = ["pods.right.d", "pods.left.d"].map((path) => r.load(path).at[1]);
    near(right.value, 0.051);
    near(left.value, -0.051);
    expect([...right.spread!.values()][0]).toBe(-[...left.spread!.values()][0]);
    near(halfWidth(r.figure("cg.y")!), 0);
  });

  it("two written ± are independent, though they say the same", () => {
    const r = resolved("item a { weight = 40 g ± 3 g ; at = (0 mm, 0 mm, 0 mm) }\nitem b { weight = 40 g ± 4 g ; at = (0 mm, 0 mm, 0 mm) }");
    near(halfWidth(r.figure("mass.total")!), 0.005);
  });

  it("passes through functions by the chain rule", () => {
    near(banded(lengthOf("sqrt(9 dm^2 ± 0.6 dm^2)"))[1], 0.01);
    near(banded(lengthOf("1 m * sin(30 deg ± 1 deg)"))[1], Math.cos(Math.PI / 6) * (Math.PI / 180));
    near(banded(lengthOf("1 m * tan(45 deg ± 1 deg)"))[1], 2 * (Math.PI / 180));
    near(banded(lengthOf("abs(-4 mm ± 1 mm)"))[1], 0.001);
    near(banded(lengthOf("max(4 mm ± 1 mm, 3 mm ± 2 mm)"))[1], 0.001);
  });
});

describe("one mistake in an expression leaves the rest alone", () => {
  it("is said once and its part stays out", () => {
    const r = resolved("let a = 3 mm + 2 g\nitem x { weight = 1 g ; at = (a, 0 mm, 0 mm) }\nitem y { weight = 2 g ; at = (2 * a, 0 mm, 0 mm) }\nitem z { weight = 3 g ; at = (0 mm, 0 mm, 0 mm) }");
    expect(r.mistakes()).toEqual(['wrong_dimension at "+"']);
    expect(r.weights()).toEqual({ z: 0.003 });
    expect(r.analysis.sets[0].loading.broken.map((b) => b.key)).toEqual(["x", "y"]);
  });
});
