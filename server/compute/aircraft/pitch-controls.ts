import type { Control, Surface } from "../../model/design/geometry";
import { bracketedRoot } from "../root";
import { flapEffectiveness } from "../section-air/flapped";

/** A control that pitches, and how far the stick turns it: trailing edge in rad, down positive. */
export interface PitchControl {
  readonly path: string;
  /** Path of its surface. */
  readonly surface: string;
  readonly control: Control;
  readonly noseUp: number;
  readonly noseDown: number;
  /** Is no throw written, so that these are `usualThrow`? */
  readonly assumed: boolean;
}

/** Throw of a pitch control without one written: 20°. Common practice, no source. */
export const usualThrow = Math.PI / 9;

const pitching = new Set(["elevator", "elevon", "ruddervator"]);

/** The controls that pitch, each with its surface. */
export function pitchingControls(surfaces: readonly Surface[]): { readonly surface: Surface; readonly control: Control }[] {
  return surfaces.flatMap((surface) => surface.controls.filter(({ kind }) => pitching.has(kind)).map((control) => ({ surface, control })));
}

/**
 * Which way a control pitches by the moment (nose up) of its trailing edge going down: up on a canard, down behind. An
 * elevator's throws say where its trailing edge goes, those of mixed controls where the nose goes; one that is not written is as
 * large as the other.
 */
export function pitchControl(surface: Surface, control: Control, momentDown: number): PitchControl {
  const { path, kind, throws } = control;
  const aft = momentDown > 0 ? false : momentDown < 0 || surface.kind !== "canard";
  const plain = kind === "elevator";
  const [raise, lower] = plain ? [throws.up, throws.down] : aft ? [throws.pitch_up, throws.pitch_down] : [throws.pitch_down, throws.pitch_up];
  const up = raise ?? lower ?? usualThrow;
  const down = lower ?? raise ?? usualThrow;
  const [noseUp, noseDown] = aft ? [-up, down] : [down, -up];
  return { path, surface: surface.path, control, noseUp, noseDown, assumed: raise === undefined && lower === undefined };
}

/** Beyond this a hinged control gains no lift, rad: as a section with a flap. */
const steepest = Math.PI / 3;

/** What a deflection comes to of that of thin-section theory: less than all behind a hinge, all of a surface that turns whole. */
export function effective({ allMoving }: Pick<Control, "allMoving">, angle: number): number {
  if (allMoving) return angle;
  const turned = Math.max(-steepest, Math.min(steepest, angle));
  return flapEffectiveness(turned) * turned;
}

/** How far beyond its way the stick is followed, to say by how much it falls short; farther out the effect goes on straight. */
const farthest = 4;

/**
 * The effect of a share of the stick's way, as a share of that of the whole: −1 full nose down, 1 full nose up. Hinged controls
 * lose effect as they go farther out; that of the farthest throw stands for all.
 */
export function stickEffect(controls: readonly PitchControl[], stick: number): number {
  if (Math.abs(stick) > farthest) return (Math.abs(stick) / farthest) * stickEffect(controls, Math.sign(stick) * farthest);
  const throwOf = ({ noseUp, noseDown }: PitchControl) => Math.abs(stick < 0 ? noseDown : noseUp);
  const most = controls.reduce((far, one) => (one.control.allMoving ? far : Math.max(far, throwOf(one))), 0);
  return most > 0 ? (stick * flapEffectiveness(stick * most)) / flapEffectiveness(most) : stick;
}

/** The share of the stick's way that has this effect. */
export function stickFor(controls: readonly PitchControl[], effect: number): number {
  if (effect === 0 || !Number.isFinite(effect)) return effect;
  const end = Math.sign(effect) * farthest;
  return bracketedRoot((stick) => stickEffect(controls, stick) - effect, 0, end, 1e-12) ?? (effect * end) / stickEffect(controls, end);
}

/** Where the controls stand with the stick there, besides how they stand in neutral. */
export const deflectionAt = ({ noseUp, noseDown }: Pick<PitchControl, "noseUp" | "noseDown">, stick: number): number =>
  stick < 0 ? -stick * noseDown : stick * noseUp;
