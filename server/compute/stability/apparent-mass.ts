/**
 * Lamb's inertia coefficients of a prolate spheroid along (k1) and across (k2) its axis by fineness ratio, length over
 * diameter (H. Lamb, Hydrodynamics, art. 114; tabled in M. M. Munk, NACA Report 184). A sphere or flatter: both 0.5.
 */
export function apparentMass(fineness: number): { readonly along: number; readonly across: number } {
  if (!(fineness > 1.0001)) return { along: 0.5, across: 0.5 };
  const e = Math.sqrt(1 - 1 / fineness ** 2);
  const log = Math.log((1 + e) / (1 - e));
  const a = ((2 * (1 - e * e)) / e ** 3) * (log / 2 - e);
  const b = 1 / (e * e) - ((1 - e * e) / (2 * e ** 3)) * log;
  return { along: a / (2 - a), across: b / (2 - b) };
}
