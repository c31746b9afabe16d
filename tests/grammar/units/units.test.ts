import { unit as mathUnit } from "mathjs";
import { describe, expect, it } from "vitest";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import { combineUnits, compoundOf, findUnit, unitAliases, units, unitSymbols } from "../../../grammar/units/units";
import { usualUnits } from "../../../grammar/units/usual";

/** Two ways of writing the same product differ by a few roundings of a double. */
const roundings = 1e-14;

/** How an independent library writes our symbols, where it differs. `kt` there is a kiloton. */
const elsewhere: Readonly<Record<string, string>> = {
  kt: "1852 m / h", mph: "mile / hour", rpm: "cycle / minute", gf: "1e-3 kgf", ozf: "0.0625 lbf", "%": "0.01",
};

/** The library stores these two rounded: 745.6998715386 W and 6894.75729276459 Pa. */
const storedRounded: Readonly<Record<string, number>> = { hp: 1e-9, psi: 1e-9 };

const near = (actual: number, expected: number, tolerance: number) =>
  expect(Math.abs(actual - expected) / Math.abs(expected), `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);

const inSi = (text: string) => Number(mathUnit(/^\d/.test(text) ? text : `1 ${text}`).toSI().toJSON().value);

describe("each unit against an independent library", () => {
  const scaled = units.filter((unit) => unit.offset === undefined && unit.symbol !== "%");
  it.each(scaled.map((unit) => [unit.symbol, unit] as const))("%s", (symbol, unit) => {
    const text = elsewhere[symbol] ?? symbol;
    near(unit.scale, inSi(text), storedRounded[symbol] ?? roundings);
  });

  it.each([["degC", 25], ["degC", -40], ["degF", 77], ["degF", -40]])("%s at %d", (symbol, value) => {
    const { scale, offset = 0 } = findUnit(symbol)!;
    near(value * scale + offset, mathUnit(value, symbol).toNumber("K"), roundings);
  });
});

describe("each unit against its definition", () => {
  it.each([
    ["in", 0.0254], ["ft", 0.3048], ["lb", 0.45359237], ["oz", 0.028349523125], ["kgf", 9.80665], ["lbf", 4.4482216152605],
    ["kt", 1852 / 3600], ["mph", 0.44704], ["psi", 4.4482216152605 / 0.0254 ** 2], ["hp", 550 * 0.3048 * 4.4482216152605],
    ["rpm", Math.PI / 30], ["mAh", 3.6], ["Wh", 3600], ["%", 0.01], ["deg", Math.PI / 180],
  ])("%s is %d in SI", (symbol, si) => near(findUnit(symbol)!.scale, si, roundings));

  it("has the freezing point of water in both temperature scales", () => {
    const [c, f] = [findUnit("degC")!, findUnit("degF")!];
    near(32 * f.scale + f.offset!, 0 * c.scale + c.offset!, roundings);
  });
});

describe("compounds", () => {
  it.each([
    ["m/s", "m/s"], ["km/h", "km/hour"], ["ft/s", "ft/s"], ["rad/s", "rad/s"], ["N*m", "N m"], ["kgf*cm", "kgf cm"],
    ["ozf*in", "0.0625 lbf in"], ["rpm/V", "cycle/minute/V"], ["g/dm^2", "g/dm^2"], ["oz/ft^2", "oz/ft^2"],
    ["oz/ft^3", "oz/ft^3"], ["g/cm^3", "g/cm^3"], ["lb/ft^3", "lbm/ft^3"], ["W/lb", "W/lbm"], ["kg*m^2", "kg m^2"],
  ])("%s", (text, other) => near(compoundOf(text)!.scale, inSi(other), roundings));

  it("takes its dimension from its terms", () => {
    const found = combineUnits([{ symbol: "g", exponent: 1 }, { symbol: "dm", exponent: -2 }]);
    expect(found).toMatchObject({ dimension: dimensions.areal_density, offset: 0 });
    expect(compoundOf("/rad")?.dimension).toEqual([0, 0, 0, -1, 0, 0]);
    expect(compoundOf("kgf*cm")?.dimension).toEqual(dimensions.torque);
  });

  it("means kelvins where a temperature is one term of several", () => {
    expect(compoundOf("degF")?.offset).toBeCloseTo(255.372, 3);
    expect(compoundOf("W/degC")?.offset).toBe(0);
  });

  it("names the first symbol that is no unit", () => {
    expect(combineUnits([{ symbol: "g", exponent: 1 }, { symbol: "furlong", exponent: -2 }])).toEqual({ unknown: "furlong" });
    expect(compoundOf("g/furlong^2")).toBeUndefined();
    expect(compoundOf("")).toBeUndefined();
    expect(compoundOf("3 mm")).toBeUndefined();
  });
});

describe("the table", () => {
  /** Transcribed from the language's table of units; those with / and * are compounds. */
  const written = `mm cm dm m km in ft g kg oz lb deg rad s min h m/s km/h kt mph ft/s rpm rad/s N gf kgf ozf lbf N*m kgf*cm
    ozf*in Pa kPa MPa GPa psi V A mA Ah mAh W kW hp J Wh ohm mohm rpm/V degC degF K %`.split(/\s+/);

  it.each(written.map((symbol) => [symbol]))("knows %s", (symbol) => expect(compoundOf(symbol)).toBeDefined());

  it("has each symbol once", () => expect(unitSymbols.size).toBe(units.length));

  it("reads typographic signs as the symbol the formatter writes", () => {
    for (const [alias, symbol] of unitAliases) expect(findUnit(alias)).toBe(findUnit(symbol));
    expect(findUnit("Ω")?.symbol).toBe("ohm");
    expect(findUnit("MM")).toBeUndefined();
  });

  it("offers for each dimension units of that dimension", () => {
    for (const [name, { metric, imperial }] of Object.entries(usualUnits)) {
      for (const unit of [...metric, ...imperial]) {
        const wanted = dimensions[name as keyof typeof dimensions];
        expect(sameDimension(compoundOf(unit)!.dimension, wanted), `${unit} for ${name}`).toBe(true);
      }
    }
  });
});
