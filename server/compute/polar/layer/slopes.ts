import { late, lag, type Residuals } from "./interval";
import type { Kind, Station } from "./station";

/** Slopes of the equations over one interval by θ, mass, state and speed of the first, then of the second station; row by equation. */
export type Slopes = Float64Array;

/** By the logarithms of shape parameter, Reynolds number and θ, by state, and by the logarithm of speed, all at once. */
function chain(out: Slopes, at: number, p: Station, shape: number, reynolds: number, theta: number, state: number, speed: number): void {
  out[at] = (theta + reynolds - shape) / p.theta;
  out[at + 1] = shape / p.mass;
  out[at + 2] = state;
  out[at + 3] = (speed + reynolds - shape) / p.speed;
}

/** Slopes of momentum and energy between two stations with slopes; and by a shift of both downstream. */
export function momentumAndEnergySlopes(out: Slopes, shift: Residuals, a: Station, b: Station): void {
  const ahead = b.place / a.place;
  const log = ahead > 1 ? Math.log(ahead) : 0;
  const byShift = ahead > 1 ? 1 / b.place - 1 / a.place : 0;
  const speed = b.logSpeed - a.logSpeed;
  const mean = 0.5 * (a.shape + b.shape);
  const weight = late(a, b);
  const netA = a.place * (a.friction - a.dissipation), netB = b.place * (b.friction - b.dissipation);
  const byWeight = log * (netB - netA) * lateSlope(a, b, weight);
  shift[0] = -0.5 * (byShift * (a.place * a.friction + b.place * b.friction) + log * (a.friction + b.friction));
  shift[1] = byShift * ((1 - weight) * netA + weight * netB) +
    log * ((1 - weight) * (a.friction - a.dissipation) + weight * (b.friction - b.dissipation));
  momentumSlopes(out, 0, a, -1, speed, mean, log);
  momentumSlopes(out, 4, b, 1, speed, mean, log);
  energySlopes(out, 8, a, -1, speed, mean, (1 - weight) * log, byWeight);
  energySlopes(out, 12, b, 1, speed, mean, weight * log, byWeight);
}

function momentumSlopes(out: Slopes, at: number, end: Station, sign: 1 | -1, speed: number, mean: number, log: number): void {
  const half = -0.5 * log * end.place;
  const shape = end.held ? 0 : end.shape * (0.5 * speed + half * end.byShape.friction);
  chain(out, at, end, shape, end.reynolds * half * end.byReynolds.friction, sign - half * end.friction, 0, sign * (mean + 2));
}

function energySlopes(out: Slopes, at: number, end: Station, sign: 1 | -1, speed: number, mean: number, share: number, byWeight: number): void {
  const whole = share * end.place;
  const { byShape, byReynolds } = end;
  const shape = sign * byShape.logEnergy - 0.5 * speed + whole * (byShape.friction - byShape.dissipation) + (sign * byWeight) / (end.shape - 1);
  const reynolds = sign * byReynolds.logEnergy + whole * (byReynolds.friction - byReynolds.dissipation);
  chain(out, at, end, end.held ? 0 : end.shape * shape, end.reynolds * reynolds, -whole * (end.friction - end.dissipation),
    -whole * end.dissipationByState, sign * (1 - mean));
}

/** d(weight)⁄d(ln(shape − 1)) of the second; of the first the negative. */
const lateSlope = (a: Station, b: Station, weight: number): number => 8 * Math.log((b.shape - 1) / (a.shape - 1)) * (1 - weight);

export function waveSlopes(out: Slopes, a: Station, b: Station): void {
  waveEnd(out, 16, a, -1, -0.5 * (b.place - a.place));
  waveEnd(out, 20, b, 1, -0.5 * (b.place - a.place));
}

function waveEnd(out: Slopes, at: number, end: Station, sign: 1 | -1, half: number): void {
  chain(out, at, end, end.held ? 0 : end.shape * half * end.byShape.growth, end.reynolds * half * end.byReynolds.growth, -half * end.growth, sign, 0);
}

export function stressSlopes(out: Slopes, a: Station, b: Station, kind: Kind): void {
  const length = b.place - a.place;
  const weight = late(a, b);
  const factor = (length * lag(kind)) / (a.thickness + b.thickness);
  const restA = a.equilibrium - a.state, restB = b.equilibrium - b.state;
  const byWeight = -factor * (restB - restA) * lateSlope(a, b, weight);
  const byThickness = (factor * ((1 - weight) * restA + weight * restB)) / (a.thickness + b.thickness);
  stressEnd(out, 16, a, -1, factor * (1 - weight), byThickness, byWeight, -0.5 * length);
  stressEnd(out, 20, b, 1, factor * weight, byThickness, byWeight, -0.5 * length);
}

function stressEnd(out: Slopes, at: number, end: Station, sign: 1 | -1, factor: number, byThickness: number, byWeight: number, half: number): void {
  const { byShape, byReynolds } = end;
  const shape = byThickness * byShape.thickness - factor * byShape.equilibrium + half * byShape.gradient + (sign * byWeight) / (end.shape - 1);
  const reynolds = byThickness * byReynolds.thickness - factor * byReynolds.equilibrium + half * byReynolds.gradient;
  chain(out, at, end, end.held ? 0 : end.shape * shape, end.reynolds * reynolds, byThickness * end.thickness - half * end.gradient,
    sign / end.state + factor, sign);
}
