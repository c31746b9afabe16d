/**
 * Drag of a thick smooth thing over the friction of a plate as large as its wetted surface (S. F. Hoerner, Fluid-Dynamic
 * Drag, 1965, ch. 6; from memory).
 */

/** By thickness over chord. */
export function sectionForm(thickness: number): number {
  return 1 + 2 * thickness + 60 * thickness ** 4;
}

/**
 * By length over diameter of the largest section. Hoerner's, and not 1 + 60/f³ + f/400 (D. P. Raymer), since that grows
 * without end for a boom, and counts the blunt ends of a fuselage, which here are counted by themselves.
 */
export function bodyForm(fineness: number): number {
  const f = Math.max(fineness, 0.5);
  return 1 + 1.5 / f ** 1.5 + 7 / f ** 3;
}
