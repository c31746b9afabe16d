import { addMomentumAndEnergy, stressResidual, waveResidual, type Residuals } from "./interval";
import { fill, station, type Kind, type Station } from "./station";
import { transitionResiduals } from "./transition";

/** What the layer does between two stations. */
export type Mode = "laminar" | "transition" | "turbulent" | "wake";

export const kindAfter = (mode: Mode): Kind => (mode === "transition" ? "turbulent" : mode);
export const kindBefore = (mode: Mode): Kind => (mode === "transition" ? "laminar" : mode);

/** Flow that all stations share: Reynolds number of the chord, and the logarithm of amplitude at which waves break. */
export interface Stream {
  readonly reynolds: number;
  readonly critical: number;
}

/** Momentum, energy and state equations between two filled stations; all zero when met. */
export function residuals(out: Residuals, a: Station, b: Station, mode: Mode, stream: Stream): void {
  out.fill(0);
  if (mode === "transition") return transitionResiduals(out, a, b, stream.critical, stream.reynolds);
  addMomentumAndEnergy(out, a, b);
  out[2] = mode === "laminar" ? waveResidual(a, b) : stressResidual(a, b, mode);
}

/** Residuals and their derivatives by θ, mass, state and speed of the first, then of the second station; row by equation. */
export interface Linear {
  readonly value: Float64Array;
  readonly slope: Float64Array;
  /** By a shift of both stations downstream. */
  readonly shift: Float64Array;
}

export const linear = (): Linear => ({ value: new Float64Array(3), slope: new Float64Array(24), shift: new Float64Array(3) });

const [moved, other, changed] = [station(), station(), new Float64Array(3)];

/** Step of the differences, as share of the value. */
const share = 1e-6;

/** Differences, as the transition point's place has no handy derivative; `both` false leaves out the first station's. */
export function linearise(out: Linear, a: Station, b: Station, mode: Mode, stream: Stream, both = true): void {
  residuals(out.value, a, b, mode, stream);
  for (let k = both ? 0 : 4; k < 8; k++) {
    const from = k < 4 ? a : b;
    const step = k % 4 === 2 ? share * Math.max(Math.abs(from.state), 0.01) : share * (k % 4 === 0 ? from.theta : k % 4 === 1 ? from.mass : from.speed);
    const by = (which: number) => (k % 4 === which ? step : 0);
    fill(moved, k < 4 ? kindBefore(mode) : kindAfter(mode), from.place, from.theta + by(0), from.mass + by(1), from.state + by(2), from.speed + by(3), stream.reynolds);
    if (k < 4) residuals(changed, moved, b, mode, stream);
    else residuals(changed, a, moved, mode, stream);
    for (let e = 0; e < 3; e++) out.slope[e * 8 + k] = (changed[e] - out.value[e]) / step;
  }
  if (!both) return;
  const step = share * a.place;
  Object.assign(moved, a).place += step;
  Object.assign(other, b).place += step;
  residuals(changed, moved, other, mode, stream);
  for (let e = 0; e < 3; e++) out.shift[e] = (changed[e] - out.value[e]) / step;
}
