import type { Air } from "../atmosphere/atmosphere";
import { bracketedRoot } from "../root";
import type { Blade, BladeElement } from "./blade";
import { sectionAt, sectionForces } from "./section";

/** The share of a ring's air that a few blades move: L. Prandtl's loss (in A. Betz, 1919), at tip and root. Not under 0.0001. */
export function movedShare(blade: Pick<Blade, "count" | "diameter" | "hubRadius">, radius: number, sine: number): number {
  const share = (gap: number) => {
    const f = gap > 0 ? ((blade.count / 2) * gap) / sine : 0;
    return f > 20 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-f));
  };
  const tip = blade.diameter / 2;
  return Math.max(share((tip - radius) / radius) * share((radius - blade.hubRadius) / blade.hubRadius), 1e-4);
}

/** Thrust (N) and torque (N m) of all blades in one ring. */
export interface ElementLoad {
  readonly thrust: number;
  readonly torque: number;
}

/**
 * The load of one ring: section forces and the momentum they give its air, axial and swirl, agree at one inflow angle φ
 * (H. Glauert, Airplane Propellers, 1935). After S. A. Ning (Wind Energy 17, 2014) both balances are one equation in φ
 * alone, here multiplied out by sin φ so that it also holds standing still:
 *
 *   Ωr (sin φ |sin φ| − k cₙ) = V (cos φ |sin φ| + k cₜ),   k = σ/4F.
 *
 * At the undisturbed angle atan(V/Ωr) the difference has the sign of −lift; at the angle without lift, that of the way from
 * one to the other: so they always hold a root between them, thrusting, windmilling or blowing forward. Momentum fails in
 * the turbulent wake of a strongly braking disc; no correction is made for it.
 */
export function elementLoad(blade: Blade, element: BladeElement, rotation: number, speed: number, air: Pick<Air, "density" | "viscosity">): ElementLoad {
  const { radius, chord, angle, width } = element;
  const around = rotation * radius;
  const solidity = (blade.count * chord) / (2 * Math.PI * radius);
  const reynolds = (air.density * chord * Math.hypot(around, speed)) / air.viscosity;
  const section = sectionAt(blade.section, reynolds, chord / radius);
  const balance = (phi: number) => {
    const [sine, cosine] = [Math.sin(phi), Math.cos(phi)];
    const size = Math.abs(sine);
    const { lift, drag } = sectionForces(section, angle - phi);
    const k = solidity / (4 * movedShare(blade, radius, size));
    const normal = lift * cosine - drag * sine;
    const tangential = lift * sine + drag * cosine;
    const axial = sine * size - k * normal;
    const swirl = cosine * size + k * tangential;
    return { size, normal, tangential, axial, swirl, residual: around * axial - speed * swirl };
  };
  const residual = (phi: number) => balance(phi).residual;
  const undisturbed = Math.atan2(speed, around);
  const liftless = Math.min(Math.PI / 2, Math.max(-Math.PI / 2, angle - section.zeroLift));
  const at = balance(bracketedRoot(residual, undisturbed, liftless, 1e-6) ?? undisturbed);
  // Both components give the relative speed; taken together neither divides by nothing.
  const relative = (at.size * (around * at.swirl + speed * at.axial)) / (at.swirl ** 2 + at.axial ** 2 || 1);
  const force = 0.5 * air.density * relative ** 2 * blade.count * chord * width;
  return { thrust: force * at.normal, torque: force * at.tangential * radius };
}
