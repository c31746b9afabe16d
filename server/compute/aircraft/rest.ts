import type { Control, Surface } from "../../model/design/geometry";

/** How far a control stands down with the stick in the middle and the flaps at an angle, rad: its reflex up, flaps by the loading. */
export function restAngle({ kind, throws, reflex = 0 }: Control, flaps: number): number {
  return flapAngle(kind, throws, flaps) - reflex;
}

/** Flaps go as far as their throw, flaperons as far as their droop; those without droop stay. */
function flapAngle(kind: string, throws: Control["throws"], flaps: number): number {
  if (kind === "flap") return Math.max(-(throws.up ?? Infinity), Math.min(throws.down ?? Infinity, flaps));
  return kind === "flaperon" ? Math.max(0, Math.min(throws.droop ?? 0, flaps)) : 0;
}

/** Everything that stands out of neutral. */
export function resting(surfaces: readonly Surface[], flaps: number): { readonly surface: string; readonly control: Control; readonly angle: number }[] {
  return surfaces.flatMap(({ path, controls }) =>
    controls.map((control) => ({ surface: path, control, angle: restAngle(control, flaps) })).filter(({ angle }) => angle !== 0));
}
