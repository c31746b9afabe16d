import { type Kind, type Station } from "./station";

/** Rate at which the stress nears equilibrium, by thicknesses of the layer (J. E. Green's lag; Drela and Giles 1987). */
const rate = 5.6;

/** That rate; in the wake it is a little less. */
export const lag = (kind: Kind): number => (kind === "wake" ? rate * 0.9 : rate);

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
  const weight = late(a, b);
  out[1] += b.logEnergy - a.logEnergy + (1 - shape) * speed +
    log * ((1 - weight) * a.place * (a.friction - a.dissipation) + weight * b.place * (b.friction - b.dissipation));
}

/** Weight of the downstream station: a half where the layer changes slowly, up to one where its shape jumps. */
export function late(a: Station, b: Station): number {
  const jump = Math.log((b.shape - 1) / (a.shape - 1)) ** 2;
  return 1 - 0.5 * Math.exp(-jump * 4);
}

/** Waves grow by the mean rate of the two stations. */
export const waveResidual = (a: Station, b: Station): number => b.state - a.state - 0.5 * (b.place - a.place) * (a.growth + b.growth);

/** Lag of the stress behind equilibrium. */
export function stressResidual(a: Station, b: Station, kind: Kind): number {
  const length = b.place - a.place;
  const weight = late(a, b);
  const rest = (1 - weight) * (a.equilibrium - a.state) + weight * (b.equilibrium - b.state);
  return Math.log(b.state / a.state) - (length * lag(kind) * rest) / (a.thickness + b.thickness) -
    0.5 * length * (a.gradient + b.gradient) + (b.logSpeed - a.logSpeed);
}
