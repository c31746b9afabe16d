import { type Kind, type Station } from "./station";

/** Rate at which the stress nears equilibrium, by thicknesses of the layer (J. E. Green's lag; Drela and Giles 1987). */
const lag = 5.6;

/** Residuals of momentum, energy, and of the state (waves, or stress) between two stations. */
export type Residuals = Float64Array;

/**
 * The integral equations over one interval, in logarithms so that power-law flows are met exactly:
 * dlnθ + (H + 2) dlnu = c_f⁄2θ ds, and dlnH* + (1 − H) dlnu = (2c_D⁄H* − c_f⁄2)⁄θ ds.
 * Added to what stands in `out`, times 1.
 */
export function addMomentumAndEnergy(out: Residuals, a: Station, b: Station): void {
  const step = b.place / a.place;
  const log = step > 1 ? Math.log(step) : 0;
  const shape = 0.5 * (a.shape + b.shape);
  const speed = b.logSpeed - a.logSpeed;
  out[0] += b.logTheta - a.logTheta + (shape + 2) * speed - 0.5 * log * (a.place * a.friction + b.place * b.friction);
  const late = lateness(a, b);
  out[1] += b.logEnergy - a.logEnergy + (1 - shape) * speed +
    log * ((1 - late) * a.place * (a.friction - a.dissipation) + late * b.place * (b.friction - b.dissipation));
}

/** Weight of the downstream station: a half where the layer changes slowly, up to one where its shape jumps. */
function lateness(a: Station, b: Station): number {
  const jump = Math.log((b.shape - 1) / (a.shape - 1)) ** 2;
  return 1 - 0.5 * Math.exp(-jump * 4);
}

/** Waves grow by the mean rate of the two stations. */
export const waveResidual = (a: Station, b: Station): number => b.state - a.state - 0.5 * (b.place - a.place) * (a.growth + b.growth);

/** Lag of the stress behind equilibrium; that of the wake has half the rate, its layers being twice as far apart. */
export function stressResidual(a: Station, b: Station, kind: Kind): number {
  const length = b.place - a.place;
  const late = lateness(a, b);
  const mean = (key: "equilibrium" | "state") => (1 - late) * a[key] + late * b[key];
  const thickness = 0.5 * (a.thickness + b.thickness);
  const rate = kind === "wake" ? lag * 0.9 : lag;
  return Math.log(b.state / a.state) - (length * rate * (mean("equilibrium") - mean("state"))) / (2 * thickness) -
    0.5 * length * (a.gradient + b.gradient) + (b.logSpeed - a.logSpeed);
}
