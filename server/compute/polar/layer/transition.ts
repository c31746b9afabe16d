import { addMomentumAndEnergy, stressResidual, type Residuals } from "./interval";
import { fill, growthIn, station, type Station } from "./station";
import { stressAtTransition } from "./turbulent";

const middle = { laminar: station(), turbulent: station() };

/** Amplitude of waves where they have grown from the first station to a place between it and the next, less the critical one. */
function excess(a: Station, b: Station, share: number, critical: number, perChord: number): number {
  const speed = a.speed + share * (b.speed - a.speed);
  const thickness = a.mass / a.speed + share * (b.mass / b.speed - a.mass / a.speed);
  const growth = growthIn(a.theta + share * (b.theta - a.theta), speed * thickness, speed, perChord);
  return a.state - critical + 0.5 * share * (b.place - a.place) * (a.growth + growth);
}

/**
 * Where between a laminar and the next station the waves reach `critical`, as share of the interval; the layer between
 * the two is taken straight. Held within the interval by a ten-thousandth of it.
 */
export function transitionShare(a: Station, b: Station, critical: number, perChord: number): number {
  let [low, high] = [least, 1 - least];
  let [below, above] = [excess(a, b, low, critical, perChord), excess(a, b, high, critical, perChord)];
  if (below >= 0) return low;
  if (above <= 0) return high;
  for (let i = 0; i < 60 && high - low > 1e-13; i++) {
    // The Illinois form of false position.
    const share = (low * above - high * below) / (above - below);
    const value = excess(a, b, share, critical, perChord);
    if (Math.abs(value) < 1e-12) return share;
    if (value > 0) [high, above, below] = [share, value, i % 2 ? below / 2 : below];
    else [low, below, above] = [share, value, i % 2 ? above / 2 : above];
  }
  return (low + high) / 2;
}

const least = 1e-4;

/**
 * The same for stations that differ a little from those whose share is known, by one step of Newton's method; `rate` is
 * d(amplitude)⁄d(share) there, and 0 where the share is held.
 */
export const shareNear = (a: Station, b: Station, share: number, rate: number, critical: number, perChord: number): number =>
  rate > 0 ? share - excess(a, b, share, critical, perChord) / rate : share;

/** The rate that `shareNear` takes. */
export function rateAt(a: Station, b: Station, share: number, critical: number, perChord: number): number {
  if (share <= least || share >= 1 - least) return 0;
  const step = 1e-6;
  return (excess(a, b, share + step, critical, perChord) - excess(a, b, share - step, critical, perChord)) / (2 * step);
}

function between(out: Station, kind: "laminar" | "turbulent", a: Station, b: Station, share: number, state: number, perChord: number): void {
  const speed = a.speed + share * (b.speed - a.speed);
  const thickness = a.mass / a.speed + share * (b.mass / b.speed - a.mass / a.speed);
  fill(out, kind, a.place + share * (b.place - a.place), a.theta + share * (b.theta - a.theta), speed * thickness, state, speed, perChord);
}

/** Residuals over the interval in which the layer turns turbulent at a share of it: laminar up to there, turbulent from there on. */
export function transitionResiduals(out: Residuals, a: Station, b: Station, share: number, critical: number, perChord: number): void {
  between(middle.laminar, "laminar", a, b, share, critical, perChord);
  const { turbulent } = middle;
  between(turbulent, "turbulent", a, b, share, 0.05, perChord);
  const stress = stressAtTransition(turbulent.shape) * turbulent.equilibrium;
  between(turbulent, "turbulent", a, b, share, stress, perChord);
  out.fill(0);
  addMomentumAndEnergy(out, a, middle.laminar);
  addMomentumAndEnergy(out, turbulent, b);
  out[2] = stressResidual(turbulent, b, "turbulent");
}
