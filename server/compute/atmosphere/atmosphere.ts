import { standardGravity } from "../constants";

/** ISO 2533:1975: specific gas constant of dry air (J/(kg K)), ratio of specific heats, sea level, lapse to the tropopause. */
const gasConstant = 287.05287;
const heatRatio = 1.4;
const seaLevel = { temperature: 288.15, pressure: 101_325 };
const lapse = 0.0065;
const tropopause = 11_000;
/** Density where the lapse ends, kg/m³: the thinnest air a ceiling is looked for in. */
export const tropopauseDensity = 0.3639;
const earthRadius = 6_356_766;

export interface Air {
  /** K */
  readonly temperature: number;
  /** Pa */
  readonly pressure: number;
  /** kg/m³ */
  readonly density: number;
  /** m/s */
  readonly speedOfSound: number;
  /** Dynamic, Pa s. */
  readonly viscosity: number;
}

export interface Place {
  /** Geopotential altitude, m: over a flying field the same as the height on a map to 0.05 %. */
  readonly altitude: number;
  /** As measured, K; the standard's for the altitude when absent. */
  readonly temperature?: number;
  /** As measured at the place (not reduced to sea level), Pa; the standard's for the altitude when absent. */
  readonly pressure?: number;
}

/**
 * Dry air at a place after ISO 2533:1975, isothermal above 11 km; a measured temperature or pressure takes the place of
 * the standard's. Undefined where these are no air: not finite, or not above zero.
 */
export function atmosphere(place: Place): Air | undefined {
  const standard = standardAir(place.altitude);
  const temperature = place.temperature ?? standard.temperature;
  const pressure = place.pressure ?? standard.pressure;
  if (!(temperature > 0 && pressure > 0 && Number.isFinite(temperature) && Number.isFinite(pressure))) return undefined;
  return {
    temperature,
    pressure,
    density: pressure / (gasConstant * temperature),
    speedOfSound: Math.sqrt(heatRatio * gasConstant * temperature),
    viscosity: (1.458e-6 * temperature ** 1.5) / (temperature + 110.4),
  };
}

function standardAir(altitude: number): { temperature: number; pressure: number } {
  const temperature = seaLevel.temperature - lapse * Math.min(altitude, tropopause);
  const below = seaLevel.pressure * (temperature / seaLevel.temperature) ** (standardGravity / (gasConstant * lapse));
  const above = Math.max(0, altitude - tropopause);
  return { temperature, pressure: below * Math.exp((-standardGravity * above) / (gasConstant * temperature)) };
}

/** Geopotential altitude (m) of a geometric height (m), ISO 2533:1975. */
export function geopotentialAltitude(height: number): number {
  return (earthRadius * height) / (earthRadius + height);
}

/** Altitude (m) at which the standard air below the tropopause has this density (kg/m³). */
export function densityAltitude(density: number): number {
  const seaLevelDensity = seaLevel.pressure / (gasConstant * seaLevel.temperature);
  const exponent = standardGravity / (gasConstant * lapse) - 1;
  return (seaLevel.temperature / lapse) * (1 - (density / seaLevelDensity) ** (1 / exponent));
}
