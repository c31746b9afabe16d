import { nearest } from "../nearest";
import { unitAliases, units, unitSymbols } from "../units/units";

/** What people write for a unit besides its symbol. Names of units come from the table of units. */
const written: Readonly<Record<string, string>> = {
  meter: "m", millimeter: "mm", centimeter: "cm", decimeter: "dm", kilometer: "km", micrometer: "um", micron: "um",
  inches: "in", feet: "ft", gr: "g", gram: "g", lbs: "lb", degree: "deg", radian: "rad", sec: "s", hr: "h",
  kmh: "km/h", kph: "km/h", fps: "ft/s", ms: "m/s", knots: "kt", kts: "kt", kn: "kt", U: "rpm", kgcm: "kgf*cm", ozin: "ozf*in",
  Nm: "N*m", amp: "A", amps: "A", milliamp: "mA", volt: "V", watt: "W", hz: "/s", Hz: "/s", C: "degC", F: "degF",
  celsius: "degC", fahrenheit: "degF", pct: "%", percent: "%", kp: "kgf",
};

const words: ReadonlyMap<string, string> = new Map([
  ...units.flatMap((unit) => [[unit.symbol, unit.symbol], [unit.name, unit.symbol], [`${unit.name}s`, unit.symbol]] as const),
  ...Object.entries(written).flatMap(([word, symbol]) => [[word, symbol], [`${word}s`, symbol]] as const),
]);

/** The unit a word after a number most likely means: `milimeter` → `mm`, `Mah` → `mAh`. */
export function likelyUnit(word: string): string | undefined {
  const known = words.get(word) ?? words.get(word.toLowerCase());
  if (known) return known;
  const near = nearest(word, words.keys());
  return near === undefined ? undefined : words.get(near);
}

const marks: Readonly<Record<string, string>> = { '"': "in", "'": "ft" };

/** The symbol as the formatter writes it: `deg` for `°`. */
export const plainSymbol = (symbol: string): string => unitSymbols.has(symbol) ? symbol :
  unitAliases.get(symbol.replace("º", "°")) ?? marks[symbol] ?? symbol.replace(/[Ω\u2126]/g, "ohm");

/** Units that follow one another in `5 ft 3 in`. */
const steps: ReadonlySet<string> = new Set([
  "ft in", "lb oz", "kg g", "km m", "m dm", "m cm", "m mm", "cm mm", "h min", "h s", "min s", "deg min",
]);
export const stepsDown = (first: string, second: string): boolean => steps.has(`${first} ${second}`);
