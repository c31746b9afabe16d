/** Exponents of length, mass, time, angle, current, temperature, in that order. SI base units, angle in radians. */
export type Dimension = readonly [number, number, number, number, number, number];

export const dimensions = {
  ratio: [0, 0, 0, 0, 0, 0],
  length: [1, 0, 0, 0, 0, 0],
  area: [2, 0, 0, 0, 0, 0],
  volume: [3, 0, 0, 0, 0, 0],
  mass: [0, 1, 0, 0, 0, 0],
  angle: [0, 0, 0, 1, 0, 0],
  time: [0, 0, 1, 0, 0, 0],
  frequency: [0, 0, -1, 0, 0, 0],
  speed: [1, 0, -1, 0, 0, 0],
  rotation: [0, 0, -1, 1, 0, 0],
  force: [1, 1, -2, 0, 0, 0],
  torque: [2, 1, -2, 0, 0, 0],
  pressure: [-1, 1, -2, 0, 0, 0],
  density: [-3, 1, 0, 0, 0, 0],
  areal_density: [-2, 1, 0, 0, 0, 0],
  inertia: [2, 1, 0, 0, 0, 0],
  voltage: [2, 1, -3, 0, -1, 0],
  current: [0, 0, 0, 0, 1, 0],
  charge: [0, 0, 1, 0, 1, 0],
  power: [2, 1, -3, 0, 0, 0],
  power_per_mass: [2, 0, -3, 0, 0, 0],
  energy: [2, 1, -2, 0, 0, 0],
  resistance: [2, 1, -3, 0, -2, 0],
  motor_constant: [-2, -1, 2, 1, 1, 0],
  temperature: [0, 0, 0, 0, 0, 1],
  per_angle: [0, 0, 0, -1, 0, 0],
} as const satisfies Record<string, Dimension>;

export type DimensionName = keyof typeof dimensions;

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === b || (a[0] === b[0] && a[1] === b[1] && a[2] === b[2] && a[3] === b[3] && a[4] === b[4] && a[5] === b[5]);
}

/** The name of a dimension for people ("length", "mass"), or its SI base units when it has no name. */
export function dimensionName(dimension: Dimension): string {
  for (const [name, exponents] of Object.entries(dimensions)) {
    if (sameDimension(exponents, dimension)) return name.replace(/_/g, " ");
  }
  const symbols = ["m", "kg", "s", "rad", "A", "K"];
  return dimension.map((n, i) => (n === 0 ? "" : n === 1 ? symbols[i] : `${symbols[i]}^${n}`)).filter(Boolean).join("*");
}
