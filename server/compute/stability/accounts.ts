/** What the aerodynamic figures leave out, for the account each figure gives of itself. */
export const latticeAccount =
  "Vortex lattice over all lifting surfaces together (linear, thin, no viscosity): horseshoe vortices with wakes straight back " +
  "along x, both sides or one with its image. Lift slopes are those of ideal flow, 2π for the section; real ones are a few per " +
  "cent lower, which hardly moves the neutral point.";

export const bodyAccount =
  "Bodies carry no lift; they add a nose-up moment, (k2 − k1)(π/2)∫w²(dβ/dα)dx after Munk (NACA Report 184) and Multhopp " +
  "(NACA TM 1036), with the flow ahead of and behind the wings taken from the lattice and none where a surface crosses the " +
  "body. Only the width counts, not the height or the corners of the section.";

export const neutralPointAccount =
  "Controls fixed, propeller off, small angles. Not modelled: propeller normal force and slipstream, flow that separates, the " +
  "loss of speed in the wing's wake at the tail, ground, compressibility, bending of the structure.";
