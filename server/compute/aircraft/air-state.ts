import { modeAt, type AirBasis } from "./air-basis";
import { deflectionAt, stickEffect } from "./pitch-controls";

/** How an aeroplane meets the air. */
export interface Attitude {
  /** Of the x axis to the flow, nose up, rad. */
  readonly angle: number;
  /** Share of the stick's way: 1 full nose up, −1 full nose down; 0 when absent. */
  readonly pitch?: number;
  /** Pitch rate over speed, nose up, about `AirBasis.about`, 1/m; 0 when absent. */
  readonly pitchRate?: number;
}

/** What the air does then, over dynamic pressure. */
export interface AirState extends Required<Attitude> {
  /** Of each strip, 2Γ/c: square to its own chord line. */
  readonly liftCoefficients: Float64Array;
  /** m² */
  readonly lift: number;
  readonly liftCoefficient: number;
  /** m² */
  readonly inducedDrag: number;
  /** Nose up about a line across at (x, z), m³; without z as if all stood at one height. */
  readonly moment: (x: number, z?: number) => number;
}

/** Any state by superposition. */
export function stateOf(basis: AirBasis, { angle, pitch = 0, pitchRate = 0 }: Attitude): AirState {
  const shares = sharesOf(basis, { angle, pitch, pitchRate });
  const { strips, modes } = basis;
  const liftCoefficients = new Float64Array(strips.length);
  modes.forEach(({ circulation }, m) => {
    const share = 2 * shares[m];
    if (share !== 0) for (let i = 0; i < circulation.length; i++) liftCoefficients[i] += share * circulation[i];
  });
  for (let i = 0; i < strips.length; i++) liftCoefficients[i] = strips[i].chord > 0 ? liftCoefficients[i] / strips[i].chord : 0;
  const lift = liftBy(basis, shares);
  return {
    angle, pitch, pitchRate, liftCoefficients, lift, liftCoefficient: lift / basis.reference.area,
    inducedDrag: quadratic(basis.products.drag, shares),
    moment: (x, z) => momentBy(basis, shares, x, z),
  };
}

/** How much of each mode there is. */
export function sharesOf({ controls }: AirBasis, { angle, pitch, pitchRate }: Required<Attitude>): number[] {
  const effect = stickEffect(controls, pitch);
  return [1, angle, Math.max(0, effect), Math.max(0, -effect), pitchRate];
}

export const liftBy = ({ modes }: Pick<AirBasis, "modes">, shares: readonly number[]): number =>
  modes.reduce((sum, { lift }, m) => sum + shares[m] * lift, 0);

/**
 * Nose up about (x, z). To second order where z is given: the lift leans forward by the angle and the induced drag aft, each at
 * its height.
 */
export function momentBy({ modes, about, products }: Pick<AirBasis, "modes" | "about" | "products">, shares: readonly number[], x: number, z?: number): number {
  const lift = modes.reduce((sum, mode, m) => sum + shares[m] * mode.lift, 0);
  const level = modes.reduce((sum, { moment }, m) => sum + shares[m] * moment, 0) + (x - about) * lift;
  if (z === undefined) return level;
  const drag = quadratic(products.dragHeight, shares) - z * quadratic(products.drag, shares);
  const lean = products.liftHeight.reduce((sum, height, m) => sum + shares[m] * height, 0) - z * lift;
  return level + drag - shares[modeAt.angle] * lean;
}

function quadratic(pairs: readonly (readonly number[])[], shares: readonly number[]): number {
  return pairs.reduce((sum, row, m) => (shares[m] === 0 ? sum : sum + shares[m] * row.reduce((part, value, n) => part + value * shares[n], 0)), 0);
}

/** How far a control surface stands out, rad, trailing edge down positive, without its reflex. */
export interface Deflected {
  readonly path: string;
  readonly angle: number;
}

export const deflectionsAt = ({ controls }: Pick<AirBasis, "controls">, pitch: number): Deflected[] =>
  controls.map((one) => ({ path: one.path, angle: deflectionAt(one, pitch) }));
