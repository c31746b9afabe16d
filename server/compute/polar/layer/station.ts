import { amplification } from "./amplification";
import { laminarDissipation, laminarEnergy, laminarFriction } from "./laminar";
import {
  dissipationByStress, equilibriumGradient, equilibriumStress, layerThickness, turbulentDissipation, turbulentEnergy, turbulentFriction,
} from "./turbulent";

export type Kind = "laminar" | "turbulent" | "wake";

/** What the closures give. */
export interface Closures {
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

/**
 * The boundary layer at one place, and what follows from it. Lengths in chords, speeds over that at infinity. `state` is
 * the logarithm of the amplitude of waves in a laminar layer, the root of the stress coefficient in a turbulent one.
 */
export interface Station extends Closures {
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
  /** Whether the shape parameter is held at its least. */
  held: boolean;
  /** Whether the slopes stand: of the closures at constant θ, by the shape parameter and by the Reynolds number. */
  sloped: boolean;
  readonly byShape: Closures;
  readonly byReynolds: Closures;
  dissipationByState: number;
}

const closures = (): Closures => ({ logEnergy: 0, friction: 0, dissipation: 0, growth: 0, equilibrium: 0, thickness: 0, gradient: 0 });

export const station = (): Station => ({
  ...closures(), place: 0, theta: 0, mass: 0, state: 0, speed: 0, shape: 0, reynolds: 0, logTheta: 0, logSpeed: 0,
  held: false, sloped: false, byShape: closures(), byReynolds: closures(), dissipationByState: 0,
});

/** Least shape parameter the closures are asked for. */
export const leastShape = (kind: Kind): number => (kind === "laminar" ? 1.05 : kind === "wake" ? 1.0005 : 1.02);

export function fill(out: Station, kind: Kind, place: number, theta: number, mass: number, state: number, speed: number, perChord: number): void {
  const shape = mass / speed / theta;
  const least = leastShape(kind);
  out.place = place;
  out.theta = theta;
  out.mass = mass;
  out.state = state;
  out.speed = speed;
  out.held = shape < least;
  out.shape = out.held ? least : shape;
  out.reynolds = speed * theta * perChord;
  out.logTheta = Math.log(theta);
  out.logSpeed = Math.log(speed);
  out.sloped = false;
  close(out, kind, out.shape, out.reynolds, theta, state);
}

/** Growth of waves by length in a laminar layer. */
export const growthIn = (theta: number, mass: number, speed: number, perChord: number): number =>
  amplification(Math.max(mass / speed / theta, leastShape("laminar")), speed * theta * perChord) / theta;

function close(out: Closures, kind: Kind, shape: number, reynolds: number, theta: number, state: number): void {
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

/** Step of the differences, as share of the value; of the shape parameter, as share of what it is above 1. */
const share = 1e-6;

/** Adds the slopes of the closures to a filled station, by differences. */
export function addSlopes(at: Station, kind: Kind): void {
  if (at.sloped) return;
  const { shape, reynolds, theta, state, byShape, byReynolds } = at;
  const wider = share * (shape - 1);
  close(byShape, kind, shape + wider, reynolds, theta, state);
  difference(byShape, at, at.held ? Infinity : wider, kind);
  if (kind === "laminar") {
    byReynolds.logEnergy = 0;
    byReynolds.friction = -at.friction / reynolds;
    byReynolds.dissipation = -at.dissipation / reynolds;
    byReynolds.growth = (amplification(shape, reynolds * (1 + share)) / theta - at.growth) / (share * reynolds);
    at.dissipationByState = 0;
  } else {
    close(byReynolds, kind, shape, reynolds * (1 + share), theta, state);
    difference(byReynolds, at, share * reynolds, kind);
    at.dissipationByState = dissipationByStress(shape, Math.exp(at.logEnergy), state, kind === "turbulent") / theta;
  }
  at.sloped = true;
}

function difference(moved: Closures, at: Closures, step: number, kind: Kind): void {
  moved.logEnergy = (moved.logEnergy - at.logEnergy) / step;
  moved.friction = (moved.friction - at.friction) / step;
  moved.dissipation = (moved.dissipation - at.dissipation) / step;
  if (kind === "laminar") {
    moved.growth = (moved.growth - at.growth) / step;
    return;
  }
  moved.equilibrium = (moved.equilibrium - at.equilibrium) / step;
  moved.thickness = (moved.thickness - at.thickness) / step;
  moved.gradient = (moved.gradient - at.gradient) / step;
}
