import { dimensions, sameDimension, type Dimension, type DimensionName } from "./dimension";

export type System = "metric" | "imperial";

/**
 * What a value is, where its dimension leaves it open: a `share` is shown in %, a `number` plain; a `distance` is flown
 * or rolled, not built; `energy` is told from `torque`. Names of dimensions serve too.
 */
export type Style = DimensionName | "share" | "number" | "distance";

/** Units from small to large; each is used below its limit, in SI, and the last above all. */
type Ladder = readonly (readonly [unit: string, below: number])[];

interface Choice {
  readonly metric: Ladder;
  readonly imperial: Ladder;
}

const always = (unit: string): Ladder => [[unit, Infinity]];
const same = (ladder: Ladder): Choice => ({ metric: ladder, imperial: ladder });

/** Which unit people read a value in. The limits are common practice among modellers, no source. */
const choices: Readonly<Record<Style, Choice>> = {
  number: same(always("")),
  ratio: same(always("")),
  share: same(always("%")),
  length: { metric: [["mm", 10], ["m", 1000], ["km", Infinity]], imperial: [["in", 6.096], ["ft", Infinity]] },
  distance: { metric: [["m", 1000], ["km", Infinity]], imperial: always("ft") },
  area: { metric: [["mm^2", 1e-4], ["cm^2", 1e-2], ["dm^2", 10], ["m^2", Infinity]], imperial: [["in^2", 1.4], ["ft^2", Infinity]] },
  volume: { metric: [["cm^3", 1e-2], ["dm^3", Infinity]], imperial: always("in^3") },
  mass: { metric: [["g", 1], ["kg", Infinity]], imperial: [["oz", 0.9], ["lb", Infinity]] },
  angle: same(always("deg")),
  time: same([["s", 120], ["min", 7200], ["h", Infinity]]),
  frequency: same(always("/s")),
  speed: { metric: always("m/s"), imperial: always("mph") },
  // A roll or a servo is slow beside a propeller: under 100 rpm.
  rotation: same([["deg/s", 10.4], ["rpm", Infinity]]),
  force: { metric: always("N"), imperial: [["ozf", 8.8], ["lbf", Infinity]] },
  torque: { metric: always("kgf*cm"), imperial: always("ozf*in") },
  energy: same([["J", 360], ["Wh", Infinity]]),
  pressure: { metric: [["Pa", 1e3], ["kPa", 1e6], ["MPa", 1e9], ["GPa", Infinity]], imperial: always("psi") },
  // Wing cube loadings and foams lie far below solid materials.
  density: { metric: [["kg/m^3", 100], ["g/cm^3", Infinity]], imperial: [["oz/ft^3", 100], ["oz/in^3", Infinity]] },
  areal_density: { metric: [["g/m^2", 0.2], ["g/dm^2", Infinity]], imperial: always("oz/ft^2") },
  inertia: { metric: [["g*m^2", 1], ["kg*m^2", Infinity]], imperial: [["oz*in^2", 0.042], ["lb*ft^2", Infinity]] },
  voltage: same(always("V")),
  current: same([["mA", 0.1], ["A", Infinity]]),
  charge: same([["mAh", 36000], ["Ah", Infinity]]),
  power: same([["W", 2000], ["kW", Infinity]]),
  power_per_mass: { metric: always("W/kg"), imperial: always("W/lb") },
  resistance: same([["mohm", 1], ["ohm", Infinity]]),
  motor_constant: same(always("rpm/V")),
  temperature: { metric: always("degC"), imperial: always("degF") },
  per_angle: same(always("/rad")),
};

const dimensionOf = (style: Style): Dimension =>
  style === "share" || style === "number" ? dimensions.ratio : style === "distance" ? dimensions.length : dimensions[style];

/** The style of a value: the wanted one where it fits its dimension, else the first that does. */
export function styleOf(dimension: Dimension, wanted?: Style): Style | undefined {
  if (wanted && sameDimension(dimensionOf(wanted), dimension)) return wanted;
  return (Object.keys(dimensions) as DimensionName[]).find((name) => sameDimension(dimensions[name], dimension));
}

/** The unit to show a value in: a text as the language writes units, empty for a plain number. */
export function unitFor(value: number, style: Style, system: System): string {
  const ladder = choices[style][system];
  const size = Math.abs(value);
  return (ladder.find(([, below]) => size < below) ?? ladder[ladder.length - 1])[0];
}
