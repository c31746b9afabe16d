/** Momentum theory (H. Glauert, Airplane Propellers, 1935): what no propeller of that disc area (m²) can better. SI. */

/** Least shaft power for a thrust standing still, W. */
export function idealStaticPower(thrust: number, area: number, density: number): number {
  return thrust ** 1.5 / Math.sqrt(2 * density * area);
}

/** Greatest thrust from a shaft power standing still, N. */
export function idealStaticThrust(power: number, area: number, density: number): number {
  return Math.cbrt(2 * density * area * power ** 2);
}

/** Greatest efficiency at an airspeed, 0 to 1. */
export function idealEfficiency(thrust: number, speed: number, area: number, density: number): number {
  return 2 / (1 + Math.sqrt(1 + (2 * thrust) / (density * area * speed ** 2)));
}
