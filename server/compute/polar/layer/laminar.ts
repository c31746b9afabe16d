/**
 * Laminar closures of the two-equation integral method, fitted to the Falkner–Skan profiles (M. Drela and M. B. Giles,
 * AIAA Journal 25(10), 1987; constants of M. Drela, Flight Vehicle Aerodynamics, MIT Press 2014, ch. 4, from memory).
 * `shape` is the shape parameter δ*⁄θ.
 */

/** Kinetic-energy shape parameter θ*⁄θ. */
export function laminarEnergy(shape: number): number {
  const d = shape - 4.35;
  if (d > 0) return 1.528 + (0.015 * d * d) / shape;
  return 1.528 + (0.0111 * d * d - 0.0278 * d ** 3) / (shape + 1) - 0.0002 * (d * shape) ** 2;
}

/** Half the friction coefficient times the Reynolds number on θ. */
export function laminarFriction(shape: number): number {
  if (shape < 5.5) return 0.5 * ((0.0727 * (5.5 - shape) ** 3) / (shape + 1) - 0.07);
  return 0.5 * (0.015 * (1 - 1 / (shape - 4.5)) ** 2 - 0.07);
}

/** Dissipation coefficient over half the energy shape parameter, times the Reynolds number on θ. */
export function laminarDissipation(shape: number): number {
  if (shape < 4) return 0.207 + 0.00205 * (4 - shape) ** 5.5;
  const d = (shape - 4) ** 2;
  return 0.207 - (0.0016 * d) / (1 + 0.02 * d);
}

/** Shape parameter of the flow from a stagnation point, where the speed rises in proportion to the distance. */
export const stagnationShape = stagnation();

/** θ²·speed⁄(viscosity·distance) there, by the momentum equation. */
export const stagnationThickness = laminarFriction(stagnationShape) / (stagnationShape + 2);

function stagnation(): number {
  let [low, high] = [2, 2.59];
  for (let i = 0; i < 60; i++) {
    const h = (low + high) / 2;
    // Momentum and energy equations with θ constant and dln(speed)/dln(distance) = 1.
    const excess = (1 - h) * laminarFriction(h) - (h + 2) * (laminarDissipation(h) - laminarFriction(h));
    if (excess > 0) low = h;
    else high = h;
  }
  return (low + high) / 2;
}
