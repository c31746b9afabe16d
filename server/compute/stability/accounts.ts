/** What the aerodynamic figures leave out, for the account each figure gives of itself. */
export const latticeAccount =
  "Vortex lattice over all lifting surfaces together (linear, thin, no viscosity): horseshoe vortices with wakes straight back " +
  "along x, both sides or one with its image. Lift slopes are those of ideal flow, 2π for the section; real ones are a few per " +
  "cent lower, which hardly moves the neutral point.";

export const bodyAccount =
  "Bodies carry no lift; they add a nose-up moment, (k2 − k1)(π/2)∫w²(dβ/dα)dx after Munk (NACA Report 184) and Multhopp " +
  "(NACA TM 1036), with the flow ahead of and behind the wings taken from the lattice and none where a surface crosses the " +
  "body. Only the width counts, not the height or the corners of the section.";

export const lateralAccount =
  "The lattice takes the wind of a sideslip or turn as it meets each point, x along the flow; forces on the bound vortices and the " +
  "induced drag. Left out: how a body over or under a wing bends the wind of a sideslip (a high wing adds dihedral effect, a " +
  "low one takes some away), fins standing on a body, the sideways drift of wakes and the wind across the tips, drag of viscosity, " +
  "propellers.";

export const bodyYawAccount =
  "Bodies turn away from the wind by Munk's moment in free flow, by their height alone (NACA Report 184); flow that separates behind makes it " +
  "less in truth.";

export const neutralPointAccount =
  "propeller normal force and slipstream (controls are fixed, the propeller off, angles small), flow that separates, the " +
  "loss of speed in the wing's wake at the tail, ground, compressibility, bending of the structure.";
