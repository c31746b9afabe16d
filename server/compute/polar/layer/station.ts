import { amplification } from "./amplification";
import { laminarDissipation, laminarEnergy, laminarFriction } from "./laminar";
import { equilibriumGradient, equilibriumStress, layerThickness, turbulentDissipation, turbulentEnergy, turbulentFriction } from "./turbulent";

export type Kind = "laminar" | "turbulent" | "wake";

/**
 * The boundary layer at one place, and what follows from it. Lengths in chords, speeds over that at infinity. `state` is
 * the logarithm of the amplitude of waves in a laminar layer, the root of the stress coefficient in a turbulent one.
 */
export interface Station {
  place: number;
  theta: number;
  /** Speed times displacement thickness. */
  mass: number;
  state: number;
  speed: number;
  shape: number;
  /** Reynolds number on θ. */
  reynolds: number;
  logTheta: number;
  logSpeed: number;
  logEnergy: number;
  /** Half the friction coefficient over θ. */
  friction: number;
  /** Dissipation coefficient over half the energy shape parameter and over θ. */
  dissipation: number;
  /** Laminar: growth of the state by length. */
  growth: number;
  /** Turbulent: state in equilibrium, thickness of the layer, dln(speed)⁄d(distance) of an equilibrium layer. */
  equilibrium: number;
  thickness: number;
  gradient: number;
}

export const station = (): Station => ({
  place: 0, theta: 0, mass: 0, state: 0, speed: 0, shape: 0, reynolds: 0, logTheta: 0, logSpeed: 0, logEnergy: 0,
  friction: 0, dissipation: 0, growth: 0, equilibrium: 0, thickness: 0, gradient: 0,
});

/** Least shape parameter the closures are asked for. */
export const leastShape = (kind: Kind): number => (kind === "laminar" ? 1.05 : kind === "wake" ? 1.0005 : 1.02);

export function fill(out: Station, kind: Kind, place: number, theta: number, mass: number, state: number, speed: number, perChord: number): void {
  const shape = Math.max(mass / speed / theta, leastShape(kind));
  const reynolds = speed * theta * perChord;
  out.place = place;
  out.theta = theta;
  out.mass = mass;
  out.state = state;
  out.speed = speed;
  out.shape = shape;
  out.reynolds = reynolds;
  out.logTheta = Math.log(theta);
  out.logSpeed = Math.log(speed);
  if (kind === "laminar") {
    out.logEnergy = Math.log(laminarEnergy(shape));
    out.friction = laminarFriction(shape) / (reynolds * theta);
    out.dissipation = laminarDissipation(shape) / (reynolds * theta);
    out.growth = amplification(shape, reynolds) / theta;
    return;
  }
  const wall = kind === "turbulent";
  const energy = turbulentEnergy(shape, reynolds);
  const friction = wall ? turbulentFriction(shape, reynolds) : 0;
  out.logEnergy = Math.log(energy);
  out.friction = friction / theta;
  out.dissipation = turbulentDissipation(shape, energy, reynolds, friction, state, wall) / theta;
  out.equilibrium = equilibriumStress(shape, energy, reynolds, wall);
  out.thickness = theta * layerThickness(shape);
  out.gradient = equilibriumGradient(shape, reynolds, friction, wall) / (theta * shape);
}

