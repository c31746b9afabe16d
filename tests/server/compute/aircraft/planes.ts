import { airBasis, type AirBasis } from "../../../../server/compute/aircraft/air-basis";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import type { SectionAir, SectionsAir } from "../../../../server/compute/section-air/section-air";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import type { Body, Control, Surface } from "../../../../server/model/design/geometry";
import { fuselage, mirrored, single, type SurfaceForm } from "../airframes";

export const degree = Math.PI / 180;

export const air = atmosphere({ altitude: 0 })!;

export function control(kind: string, form: Partial<Control> = {}): Control {
  return { path: kind, kind, along: [0, 1], chord: [0.3, 0.3], throws: {}, allMoving: false, servos: [], ...form };
}

export const withControls = (surface: Surface, ...controls: readonly Control[]): Surface => ({ ...surface, controls });

export const basisOf = (surfaces: readonly Surface[], bodies: readonly Body[] = [], flaps = 0): AirBasis =>
  airBasis(neutralPoint({ surfaces: surfaces.map((surface) => withControls(surface)), bodies })!, { surfaces, bodies, flaps });

const naca = (digits: string): SurfaceForm => ({ shape: { type: "naca", digits } });

/** A wing of 1.5 m, a tailplane with an elevator, a fin, a fuselage: as common as they come. */
export function trainer(elevator: Partial<Control> = {}, wing: readonly Control[] = []) {
  const surfaces = [
    withControls(mirrored([[0.2, 0, 0.04, 0.24, 2 * degree], [0.2, 0.75, 0.08, 0.22, 2 * degree]], naca("2412")), ...wing),
    withControls(mirrored([[0.85, 0, 0.03, 0.15, -degree], [0.86, 0.25, 0.03, 0.12, -degree]], { kind: "tailplane", ...naca("0009") }),
      control("elevator", { throws: { up: 15 * degree, down: 12 * degree }, joined: true, ...elevator })),
    single([[0.85, 0, 0.03, 0.15], [0.9, 0, 0.22, 0.1]], { kind: "fin", ...naca("0009") }),
  ];
  return { surfaces, bodies: [fuselage([-0.05, 0, 0], [[0, 0.02, 0.02], [0.2, 0.1, 0.12], [0.6, 0.06, 0.08], [1, 0.02, 0.03]])] };
}

/** Sections that all do the same at any Reynolds number. */
export function sectionsLike(form: Partial<SectionAir> = {}): SectionsAir {
  return (_, reynolds) => ({
    reynolds, zeroLiftAngle: 0, liftSlope: 2 * Math.PI, moment: 0, liftMax: 1.3, liftMin: -0.9, drag: (lift) => 0.012 + 0.01 * lift * lift,
    origin: "computed", doubts: [], ...form,
  });
}
