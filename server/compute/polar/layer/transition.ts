import { addMomentumAndEnergy, stressResidual, type Residuals } from "./interval";
import { fill, station, type Station } from "./station";
import { stressAtTransition } from "./turbulent";

const middle = { laminar: station(), turbulent: station() };

/**
 * Where between a laminar and the next station the waves reach `critical`, as share of the interval; the layer between
 * the two is taken straight. 1 or more: not within.
 */
export function transitionShare(a: Station, b: Station, critical: number, perChord: number): number {
  const need = critical - a.state;
  if (need <= 0) return 0;
  const length = b.place - a.place;
  const excess = (share: number) => {
    between(middle.laminar, "laminar", a, b, share, critical, perChord);
    return 0.5 * share * length * (a.growth + middle.laminar.growth) - need;
  };
  let [low, high] = [0, 1];
  let [below, above] = [-need, excess(1)];
  if (above <= 0) return 1 - above;
  for (let i = 0; i < 60 && high - low > 1e-13; i++) {
    // The Illinois form of false position.
    const share = (low * above - high * below) / (above - below);
    const value = excess(share);
    if (Math.abs(value) < 1e-12) return share;
    if (value > 0) [high, above, below] = [share, value, i % 2 ? below / 2 : below];
    else [low, below, above] = [share, value, i % 2 ? above / 2 : above];
  }
  return (low + high) / 2;
}

function between(out: Station, kind: "laminar" | "turbulent", a: Station, b: Station, share: number, state: number, perChord: number): void {
  const mix = (p: number, q: number) => p + share * (q - p);
  const speed = mix(a.speed, b.speed);
  const mass = speed * mix(a.mass / a.speed, b.mass / b.speed);
  fill(out, kind, mix(a.place, b.place), mix(a.theta, b.theta), mass, state, speed, perChord);
}

/** Residuals over the interval in which the layer turns turbulent: laminar up to there, turbulent from there on. */
export function transitionResiduals(out: Residuals, a: Station, b: Station, critical: number, perChord: number): void {
  const share = Math.min(1 - 1e-4, Math.max(1e-4, transitionShare(a, b, critical, perChord)));
  between(middle.laminar, "laminar", a, b, share, critical, perChord);
  const { turbulent } = middle;
  between(turbulent, "turbulent", a, b, share, 0.05, perChord);
  const stress = stressAtTransition(turbulent.shape) * turbulent.equilibrium;
  between(turbulent, "turbulent", a, b, share, stress, perChord);
  addMomentumAndEnergy(out, a, middle.laminar);
  addMomentumAndEnergy(out, turbulent, b);
  out[2] += stressResidual(turbulent, b, "turbulent");
}
