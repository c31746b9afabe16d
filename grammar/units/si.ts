import { type Dimension, type DimensionName, dimensions, sameDimension } from "./dimension";

/** The SI symbol a value of each dimension is given in where machines read it. */
export const siSymbols: Readonly<Record<DimensionName, string>> = {
  ratio: "1", length: "m", area: "m^2", volume: "m^3", mass: "kg", angle: "rad", time: "s", frequency: "1/s", speed: "m/s",
  rotation: "rad/s", force: "N", torque: "N*m", pressure: "Pa", density: "kg/m^3", areal_density: "kg/m^2", inertia: "kg*m^2",
  voltage: "V", current: "A", charge: "C", power: "W", power_per_mass: "W/kg", energy: "J", resistance: "ohm",
  motor_constant: "rad/s/V", temperature: "K", per_angle: "1/rad",
};

const bases = ["m", "kg", "s", "rad", "A", "K"];

/** The same for any dimension; one without a name is written in base units, `m^2*s^-1`. */
export function siSymbol(dimension: Dimension): string {
  const name = (Object.keys(dimensions) as DimensionName[]).find((each) => sameDimension(dimensions[each], dimension));
  if (name) return siSymbols[name];
  return dimension.flatMap((n, i) => (n === 0 ? [] : [n === 1 ? bases[i] : `${bases[i]}^${n}`])).join("*");
}
