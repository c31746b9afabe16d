import { dimensionName, dimensions, sameDimension, type Dimension, type DimensionName } from "./dimension";

interface Usual {
  /** As it reads in a message: "takes a length". */
  readonly words: string;
  /** The units people write it in, the usual one first. The first is what a fix adds to a bare number. */
  readonly metric: readonly string[];
  readonly imperial: readonly string[];
}

const usual = (words: string, metric: readonly string[], imperial: readonly string[] = metric): Usual => ({ words, metric, imperial });

/** Each dimension as people call and write it. */
export const usualUnits: Readonly<Record<DimensionName, Usual>> = {
  ratio: usual("a plain number or a share in %", ["%"]),
  length: usual("a length", ["mm", "cm", "m"], ["in", "ft"]),
  area: usual("an area", ["dm^2", "cm^2", "m^2"], ["in^2", "ft^2"]),
  volume: usual("a volume", ["cm^3", "dm^3"], ["in^3"]),
  mass: usual("a weight", ["g", "kg"], ["oz", "lb"]),
  angle: usual("an angle", ["deg", "rad"]),
  time: usual("a time", ["s", "min", "h"]),
  frequency: usual("a frequency", ["/s"]),
  speed: usual("a speed", ["m/s", "km/h", "kt"], ["mph", "ft/s", "kt"]),
  rotation: usual("a speed of rotation", ["rpm", "deg/s", "rad/s"]),
  force: usual("a force", ["N", "kgf", "gf"], ["lbf", "ozf"]),
  torque: usual("a torque", ["kgf*cm", "N*m"], ["ozf*in"]),
  pressure: usual("a pressure or stress", ["MPa", "GPa", "kPa", "Pa"], ["psi"]),
  density: usual("a density", ["g/cm^3", "kg/m^3"], ["oz/in^3", "lb/ft^3"]),
  areal_density: usual("a weight per area", ["g/dm^2", "g/m^2"], ["oz/ft^2"]),
  inertia: usual("a moment of inertia", ["kg*m^2", "g*m^2"], ["lb*ft^2", "oz*in^2"]),
  voltage: usual("a voltage", ["V"]),
  current: usual("a current", ["A", "mA"]),
  charge: usual("a charge", ["mAh", "Ah"]),
  power: usual("a power", ["W", "kW"], ["W", "hp"]),
  power_per_mass: usual("a power per weight", ["W/kg"], ["W/lb"]),
  energy: usual("an energy", ["Wh", "J"]),
  resistance: usual("a resistance", ["mohm", "ohm"]),
  motor_constant: usual("a speed per voltage", ["rpm/V"]),
  temperature: usual("a temperature", ["degC", "K"], ["degF"]),
  per_angle: usual("a slope per angle", ["/rad", "/deg"]),
};

/** What a value of this dimension is, in words: "a length", "a plain number"; in SI base units where there is no word. */
export function wordsFor(dimension: Dimension): string {
  if (sameDimension(dimension, dimensions.ratio)) return "a plain number";
  const name = (Object.keys(dimensions) as DimensionName[]).find((known) => sameDimension(dimensions[known], dimension));
  return name ? usualUnits[name].words : `a value in ${dimensionName(dimension)}`;
}
