import { addMomentumAndEnergy, stressResidual, waveResidual } from "./interval";
import { momentumAndEnergySlopes, stressSlopes, waveSlopes } from "./slopes";
import { addSlopes, fill, station, type Kind, type Station } from "./station";
import { rateAt, shareNear, transitionResiduals, transitionShare } from "./transition";

/** What the layer does between two stations. */
export type Mode = "laminar" | "transition" | "turbulent" | "wake";

export const kindAfter = (mode: Mode): Kind => (mode === "transition" ? "turbulent" : mode);
export const kindBefore = (mode: Mode): Kind => (mode === "transition" ? "laminar" : mode);

/** Flow that all stations share: Reynolds number of the chord, and the logarithm of amplitude at which waves break. */
export interface Stream {
  readonly reynolds: number;
  readonly critical: number;
}

/** Residuals of momentum, energy and state, and their derivatives by θ, mass, state and speed of the first, then of the second station; row by equation. */
export interface Linear {
  readonly value: Float64Array;
  readonly slope: Float64Array;
  /** By a shift of both stations downstream. */
  readonly shift: Float64Array;
}

export const linear = (): Linear => ({ value: new Float64Array(3), slope: new Float64Array(24), shift: new Float64Array(3) });

/** The equations between two filled stations, all zero when met, and their slopes; `both` false may leave out the first station's. */
export function linearise(out: Linear, a: Station, b: Station, mode: Mode, stream: Stream, both = true): void {
  if (mode === "transition") return lineariseTransition(out, a, b, stream, both);
  const { value, slope, shift } = out;
  addSlopes(a, mode);
  addSlopes(b, mode);
  value.fill(0);
  addMomentumAndEnergy(value, a, b);
  momentumAndEnergySlopes(slope, shift, a, b);
  shift[2] = 0;
  if (mode === "laminar") {
    value[2] = waveResidual(a, b);
    waveSlopes(slope, a, b);
  } else {
    value[2] = stressResidual(a, b, mode);
    stressSlopes(slope, a, b, mode);
  }
}

const [moved, other, changed] = [station(), station(), new Float64Array(3)];

/** Step of the differences, as share of the value. */
const share = 1e-6;

/** By differences: the stations between which the layer turns depend on all values at both ends. */
function lineariseTransition(out: Linear, a: Station, b: Station, { critical, reynolds }: Stream, both: boolean): void {
  const place = transitionShare(a, b, critical, reynolds);
  const rate = rateAt(a, b, place, critical, reynolds);
  transitionResiduals(out.value, a, b, place, critical, reynolds);
  const differ = (from: Station, to: Station, step: number, slopes: Float64Array, at: number, stride: number) => {
    transitionResiduals(changed, from, to, shareNear(from, to, place, rate, critical, reynolds), critical, reynolds);
    for (let e = 0; e < 3; e++) slopes[e * stride + at] = (changed[e] - out.value[e]) / step;
  };
  for (let k = both ? 0 : 4; k < 8; k++) {
    const end = k < 4 ? a : b;
    const step = share * (k % 4 === 0 ? end.theta : k % 4 === 1 ? end.mass : k % 4 === 2 ? Math.max(Math.abs(end.state), 0.01) : end.speed);
    const by = (which: number) => (k % 4 === which ? step : 0);
    fill(moved, k < 4 ? "laminar" : "turbulent", end.place, end.theta + by(0), end.mass + by(1), end.state + by(2), end.speed + by(3), reynolds);
    if (k < 4) differ(moved, b, step, out.slope, k, 8);
    else differ(a, moved, step, out.slope, k, 8);
  }
  if (!both) return;
  const step = share * a.place;
  fill(moved, "laminar", a.place + step, a.theta, a.mass, a.state, a.speed, reynolds);
  fill(other, "turbulent", b.place + step, b.theta, b.mass, b.state, b.speed, reynolds);
  differ(moved, other, step, out.shift, 0, 1);
}
