import { sectionForces, type BladeSection } from "./section";

/** A ring of the disc and the blades in it. */
export interface Annulus {
  /** m */
  readonly radius: number;
  readonly width: number;
  readonly chord: number;
  /** Of the chord to the disc, rad. */
  readonly angle: number;
}

export interface Disc {
  readonly blades: number;
  readonly radius: number;
  readonly hubRadius: number;
  readonly section: BladeSection;
}

export interface AnnulusLoad {
  /** Per metre of radius, of all blades: N/m. */
  readonly thrust: number;
  /** N m/m */
  readonly torque: number;
}

/** Prandtl's loss at tip and root: what share of the ring's air a few blades move. */
function loss(disc: Disc, radius: number, sine: number): number {
  const tip = (disc.blades / 2) * (disc.radius - radius) / (radius * sine);
  const root = (disc.blades / 2) * (radius - disc.hubRadius) / (disc.hubRadius * sine);
  const share = (f: number) => (f > 20 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-f)));
  return Math.max(share(tip) * share(root), 1e-4);
}

export function annulusLoad(disc: Disc, ring: Annulus, rotation: number, speed: number, air: { density: number; viscosity: number }): AnnulusLoad {
  const { radius, chord, angle } = ring;
  const solidity = (disc.blades * chord) / (2 * Math.PI * radius);
  const around = rotation * radius;
  const reynolds = (air.density * chord * Math.hypot(around, speed)) / air.viscosity;
  const chordRadius = chord / radius;
  const at = (phi: number) => {
    const sine = Math.sin(phi), cosine = Math.cos(phi);
    const { lift, drag } = sectionForces(disc.section, angle - phi, reynolds, chordRadius);
    const k = solidity / (4 * loss(disc, radius, Math.abs(sine)));
    const normal = lift * cosine - drag * sine;
    const tangent = lift * sine + drag * cosine;
    return { sine, cosine, normal, tangent, k, residual: around * (sine * sine - k * normal) - speed * (sine * cosine + k * tangent) };
  };
  let low = 1e-4, high = Math.PI / 2;
  let a = at(low).residual, b = at(high).residual;
  if (a * b > 0) return { thrust: 0, torque: 0 };
  let mid = 0;
  let side = 0;
  for (let i = 0; i < 60 && high - low > 1e-7; i++) {
    mid = (low * b - high * a) / (b - a);
    if (i % 3 === 2) mid = 0.5 * (low + high);
    const r = at(mid).residual;
    if (Math.abs(r) < 1e-9 * (around + speed)) break;
    if (r * b > 0) { high = mid; b = r; if (side === 1) a /= 2; side = 1; }
    else { low = mid; a = r; if (side === -1) b /= 2; side = -1; }
  }
  const s = at(mid);
  const w = around * s.sine / (s.sine * s.cosine + s.k * s.tangent);
  const q = 0.5 * air.density * w * w * disc.blades * chord;
  return { thrust: q * s.normal, torque: q * s.tangent * radius };
}
