import { dimensions, type Dimension, type DimensionName } from "./dimension";

/** A unit symbol of the language. Its value in SI is `number × scale + offset`. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly scale: number;
  /** Only degC and degF have one: their zero in kelvins. A difference or a tolerance leaves it out. */
  readonly offset?: number;
  /** What it measures, for grouping in completion and the reference. */
  readonly group: string;
  /** In words, singular: "millimetre". */
  readonly name: string;
}

/** Standard acceleration of free fall, m/s² (3rd CGPM, 1901): what makes a kilogram-force of a kilogram. */
const standardGravity = 9.80665;
const inch = 0.0254;
const foot = 12 * inch;
const pound = 0.45359237;
const ounce = pound / 16;

type Row = readonly [symbol: string, scale: number, name: string, offset?: number];

const group = (name: string, dimension: DimensionName, rows: readonly Row[]): Unit[] =>
  rows.map(([symbol, scale, text, offset]) => ({
    symbol, dimension: dimensions[dimension], scale, group: name, name: text, ...(offset === undefined ? {} : { offset }),
  }));

/**
 * Every unit symbol, in the order people read them. Inch and pound: international yard and pound agreement (1959);
 * the rest ISO 80000. Others (m/s, g/dm^2, kgf*cm, rpm/V) are written as terms of these.
 */
export const units: readonly Unit[] = [
  ...group("length", "length", [
    ["mm", 1e-3, "millimetre"], ["cm", 1e-2, "centimetre"], ["dm", 1e-1, "decimetre"], ["m", 1, "metre"],
    ["km", 1e3, "kilometre"], ["um", 1e-6, "micrometre"], ["in", inch, "inch"], ["ft", foot, "foot"],
  ]),
  ...group("mass", "mass", [["g", 1e-3, "gram"], ["kg", 1, "kilogram"], ["oz", ounce, "ounce"], ["lb", pound, "pound"]]),
  ...group("angle", "angle", [["deg", Math.PI / 180, "degree"], ["rad", 1, "radian"]]),
  ...group("time", "time", [["s", 1, "second"], ["min", 60, "minute"], ["h", 3600, "hour"]]),
  ...group("speed", "speed", [["kt", 1852 / 3600, "knot"], ["mph", (5280 * foot) / 3600, "mile per hour"]]),
  ...group("rotation", "rotation", [["rpm", (2 * Math.PI) / 60, "revolution per minute"]]),
  ...group("force", "force", [
    ["N", 1, "newton"], ["gf", standardGravity / 1000, "gram-force"], ["kgf", standardGravity, "kilogram-force"],
    ["ozf", ounce * standardGravity, "ounce-force"], ["lbf", pound * standardGravity, "pound-force"],
  ]),
  ...group("pressure", "pressure", [
    ["Pa", 1, "pascal"], ["kPa", 1e3, "kilopascal"], ["MPa", 1e6, "megapascal"], ["GPa", 1e9, "gigapascal"],
    ["psi", (pound * standardGravity) / inch ** 2, "pound-force per square inch"],
  ]),
  ...group("voltage", "voltage", [["V", 1, "volt"]]),
  ...group("current", "current", [["A", 1, "ampere"], ["mA", 1e-3, "milliampere"]]),
  ...group("charge", "charge", [["Ah", 3600, "ampere hour"], ["mAh", 3.6, "milliampere hour"]]),
  ...group("power", "power", [
    ["W", 1, "watt"], ["kW", 1e3, "kilowatt"], ["hp", 550 * foot * pound * standardGravity, "horsepower (550 ft*lbf/s)"],
  ]),
  ...group("energy", "energy", [["J", 1, "joule"], ["Wh", 3600, "watt hour"]]),
  ...group("resistance", "resistance", [["ohm", 1, "ohm"], ["mohm", 1e-3, "milliohm"]]),
  ...group("temperature", "temperature", [
    ["degC", 1, "degree Celsius", 273.15], ["degF", 5 / 9, "degree Fahrenheit", (459.67 * 5) / 9], ["K", 1, "kelvin"],
  ]),
  ...group("ratio", "ratio", [["%", 0.01, "per cent"]]),
];

/** Signs people type or paste, and the symbol the formatter writes for each. */
export const unitAliases: ReadonlyMap<string, string> = new Map([
  ["°", "deg"], ["°C", "degC"], ["°F", "degF"], ["℃", "degC"], ["℉", "degF"],
  ["Ω", "ohm"], ["\u2126", "ohm"], ["mΩ", "mohm"], ["m\u2126", "mohm"], ["µm", "um"], ["μm", "um"],
]);

/** The symbols as the formatter writes them, aliases left out. */
export const unitSymbols: ReadonlySet<string> = new Set(units.map((unit) => unit.symbol));

const bySymbol = new Map(units.map((unit) => [unit.symbol, unit]));

/** The unit of a symbol or of one of its typographic aliases; case counts. */
export function findUnit(symbol: string): Unit | undefined {
  return bySymbol.get(unitAliases.get(symbol) ?? symbol);
}

/** What one number in a compound unit is in SI. A lone degC or degF has its offset; in a compound it means kelvins. */
export interface Compound {
  readonly dimension: Dimension;
  readonly scale: number;
  readonly offset: number;
}

/** The product of unit terms, `g/dm^2` being g¹ · dm⁻²; or the first symbol that is no unit. */
export function combineUnits(
  terms: readonly { readonly symbol: string; readonly exponent: number }[],
): Compound | { readonly unknown: string } {
  const total = [0, 0, 0, 0, 0, 0];
  let scale = 1;
  let offset = 0;
  for (const { symbol, exponent } of terms) {
    const unit = findUnit(symbol);
    if (!unit) return { unknown: symbol };
    unit.dimension.forEach((n, i) => (total[i] += n * exponent));
    if (exponent < 0) scale /= unit.scale ** -exponent;
    else scale *= unit.scale ** exponent;
    if (terms.length === 1 && exponent === 1) offset = unit.offset ?? 0;
  }
  return { dimension: total as unknown as Dimension, scale, offset };
}

/** The compound a unit text stands for, `g/dm^2` or `/rad`; undefined if it isn't one. */
export function compoundOf(text: string): Compound | undefined {
  const pieces = text.match(/[*/]?[^*/^\s\d]+(?:\^-?\d+)?/g) ?? [];
  if (pieces.join("") !== text || pieces.length === 0) return undefined;
  const combined = combineUnits(pieces.map((piece) => {
    const [, symbol, exponent] = /^[*/]?([^^]+)\^?(.*)$/.exec(piece) ?? [];
    return { symbol, exponent: (piece.startsWith("/") ? -1 : 1) * Number(exponent || 1) };
  }));
  return "unknown" in combined ? undefined : combined;
}
