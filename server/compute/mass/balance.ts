/** How far a part of `partMass` must move for the CG of the whole (`mass`, balancing at `cg`) to come to `target`, m. FAA-H-8083-1, weight shift. */
export function shiftNeeded(mass: number, cg: number, target: number, partMass: number): number {
  return (mass * (target - cg)) / partMass;
}

/** Ballast at `at` that brings the CG to `target`, kg; negative where `at` lies on the wrong side. FAA-H-8083-1, ballast. */
export function ballastNeeded(mass: number, cg: number, target: number, at: number): number {
  return (mass * (cg - target)) / (target - at);
}
