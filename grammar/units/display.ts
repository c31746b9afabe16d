import { styleOf, unitFor, type Style, type System } from "./choice";
import { dimensionName, type Dimension } from "./dimension";
import { halfWidth, type Quantity } from "./quantity";
import { compoundOf, type Compound } from "./units";
import { usualUnits } from "./usual";

export type { Style, System } from "./choice";

export interface Display {
  /** As a person reads it and the language takes it: `312 mm ± 4 mm`. */
  readonly text: string;
  /** The value in `unit`, not rounded. */
  readonly value: number;
  /** As the language writes it; empty for a plain number. */
  readonly unit: string;
}

function measure(unit: string): Pick<Compound, "scale" | "offset"> {
  const found = unit === "" ? { scale: 1, offset: 0 } : compoundOf(unit);
  if (!found) throw new RangeError(`no unit ${unit}`);
  return found;
}

/** The power of ten of a number's first digit; for 0, that of 1. */
const magnitude = (x: number) => (x === 0 ? 0 : Math.floor(Math.log10(Math.abs(x)) + 1e-12));

/** Fixed decimals, or tens where `decimals` is negative. Never "-0". */
function fixed(x: number, decimals: number): string {
  const step = 10 ** -decimals;
  const text = decimals >= 0 ? x.toFixed(decimals) : (Math.round(x / step) * step).toFixed(0);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** Three digits for a value that begins with 1 to 4, two for the others; whole numbers from 100 on in full. */
function decimalsOf(x: number, unit: string): number {
  const size = Math.abs(x);
  const power = magnitude(size);
  const digits = size / 10 ** power < 5 ? 3 : 2;
  const most = loadings.has(unit) && size >= 10 ? 0 : 6;
  return Math.min(most, Math.max(0, digits - 1 - power));
}

/** A tenth of these says nothing to anyone. */
const loadings = new Set(["g/dm^2", "oz/ft^2", "rpm", "deg/s"]);

/** Decimals that show a half-width with one digit, or with two where one would be off by more than a fifth or so. */
function decimalsOfBand(band: number): number {
  const rounded = Number(band.toPrecision(2));
  const power = magnitude(rounded);
  const lead = Math.round((rounded / 10 ** power) * 10) / 10;
  return lead < 2 || (lead > 2 && lead < 3) ? 1 - power : -power;
}

const trimmed = (text: string) => (text.includes(".") ? text.replace(/\.?0+$/, "") : text);

const withUnit = (number: string, unit: string) => (unit === "" ? number : `${number} ${unit}`);

/**
 * A value in a unit and rounding for people, with its band (95 %) if it has one. `wanted` decides where the dimension
 * leaves it open; a wanted style of another dimension is passed over. Dimensions without a name come in SI base units.
 */
export function display(q: Quantity, system: System, wanted?: Style): Display {
  const style = styleOf(q.dimension, wanted);
  return inUnit(q, style ? unitFor(q.value, style, system) : dimensionName(q.dimension));
}

/** The same in a unit of the caller's choice, such as `oz/ft^3`. The unit must fit the value's dimension. */
export function inUnit(q: Quantity, unit: string): Display {
  const { scale, offset } = measure(unit);
  const value = (q.value - offset) / scale;
  if (!Number.isFinite(value)) return { text: "unknown", value, unit };
  const band = halfWidth(q) / scale;
  const decimals = decimalsOfBand(band);
  const shown = band > 0 && Number.isFinite(band) && decimals + magnitude(value) < mostDigits;
  if (!shown) return { text: withUnit(trimmed(fixed(value, decimalsOf(value, unit))), unit), value, unit };
  return { text: `${withUnit(fixed(value, decimals), unit)} ± ${withUnit(fixed(band, decimals), unit)}`, value, unit };
}

/** A band so narrow that the value would need more digits than this is not worth showing. */
const mostDigits = 6;

/** A plain value without tolerance. */
export function displayValue(value: number, dimension: Dimension, system: System, wanted?: Style): Display {
  return display({ value, dimension }, system, wanted);
}

/**
 * The value in the other common units, three digits, for hover: for 165 mm `["16.5 cm", "6.50 in"]`. Leaves out the unit
 * `except` (by default the one `display` takes in metric) and those that would give a number under 1 or over 99,999.
 */
export function otherUnits(q: Quantity, except?: string, wanted?: Style): string[] {
  const style = styleOf(q.dimension, wanted);
  if (!style || style === "number" || style === "share" || style === "ratio") return [];
  const own = except ?? unitFor(q.value, style, "metric");
  const { metric, imperial } = usualUnits[style === "distance" ? "length" : style];
  return [...new Set([...metric, ...imperial])].filter((unit) => unit !== own).flatMap((unit) => {
    const { scale, offset } = measure(unit);
    const value = (q.value - offset) / scale;
    const readable = Math.abs(value) >= 1 && Math.abs(value) < 1e5;
    return readable ? [`${fixed(value, Math.max(0, 2 - magnitude(value)))} ${unit}`] : [];
  });
}
