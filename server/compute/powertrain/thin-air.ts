import { tropopauseDensity as thinnest } from "../atmosphere/atmosphere";
import { smoothCurve } from "../curve";

/** Thrust at full throttle, N, over speed in air of a density, kg/m³. */
export type ThinAir = (density: number) => (speed: number) => number;

/** Over density and speed: thrust between them is within 0.2 % of that at rest (a test). */
const [densities, places] = [6, 12];

/**
 * Thrust from the field's air to that of the tropopause, up to the speed (m/s) that has as much pressure in it as `fastest` at the field.
 * Worked out at a few densities and speeds; smooth between. In thinner air places lie at higher speeds, of the same pressures.
 */
export function* thinAirSteps(thrustIn: (density: number) => (speed: number) => number, field: number, fastest: number): Generator<void, ThinAir> {
  const grid = Array.from({ length: densities }, (_, i) => thinnest * (field / thinnest) ** (i / (densities - 1)));
  const still = Array.from({ length: places }, (_, i) => (fastest * i) / (places - 1));
  const rows: number[][] = [];
  for (const density of grid) {
    yield;
    const thrust = thrustIn(density);
    rows.push(still.map((speed) => thrust(speed * Math.sqrt(field / density))));
  }
  const over = still.map((_, i) => smoothCurve(grid, rows.map((row) => row[i])));
  return (density) => {
    const curve = smoothCurve(still, over.map((of) => of(density)));
    const slower = Math.sqrt(density / field);
    return (speed) => curve(speed * slower);
  };
}
