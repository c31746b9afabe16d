import type { Surface } from "../../../server/model/design/geometry";
import { fuselage, mirrored, single, type Row } from "./airframes";
import type { Shape } from "../../../server/compute/stability/neutral-point";

const naca = (digits: string) => ({ type: "naca" as const, digits });
const up = (angle: number, length: number) => [length * Math.cos(angle), length * Math.sin(angle)] as const;
const [outY, outZ] = up((4 * Math.PI) / 180, 0.34);

const hull = fuselage([-0.04, 0, 0], [[0, 0.02, 0.02], [0.1, 0.07, 0.09], [0.2, 0.096, 0.118], [0.5, 0.096, 0.118], [0.96, 0.03, 0.04]]);
const fin = single([[0.775, 0, 0.045, 0.17], [0.84, 0, 0.235, 0.11]], { kind: "fin", path: "upright" });

export const conventionalWing = mirrored(
  [[0.165, 0, 0.058, 0.245, 0.03], [0.165, 0.42, 0.058, 0.245, 0.03], [0.165, 0.42 + outY, 0.058 + outZ, 0.17, 0]], { shape: naca("4412") });
export const tailAt = (z: number, x = 0.775): Surface => mirrored([[x, 0, z, 0.15], [x, 0.24, z, 0.12]], { kind: "tailplane", path: "stab" });

/** Designs of every common kind, in metres; all invented. */
export const designs: Readonly<Record<string, Shape>> = {
  conventional: { surfaces: [conventionalWing, tailAt(0.04), fin], bodies: [hull] },
  "pods under the wing": {
    surfaces: [conventionalWing, tailAt(0.04), fin],
    bodies: [hull, ...[0.3, -0.3].map((y) => ({ ...fuselage([0.05, y, 0.02], [[0, 0.01, 0.01], [0.06, 0.05, 0.05], [0.25, 0.05, 0.05], [0.35, 0.01, 0.01]], `pod${y}`), kind: "body" as const }))],
  },
  "glider, four panels": {
    surfaces: [
      mirrored([[0, 0, 0, 0.22], [0.01, 0.6, 0.02, 0.2], [0.03, 1.2, 0.1, 0.15], [0.06, 1.45, 0.15, 0.11], [0.1, 1.55, 0.19, 0.06]], { shape: naca("2409") }),
      mirrored([[0.95, 0, 0, 0.11], [0.97, ...up(0.65, 0.3), 0.07]], { kind: "tailplane", path: "vee" }),
    ],
    bodies: [fuselage([-0.3, 0, -0.03], [[0, 0.01, 0.01], [0.1, 0.06, 0.07], [0.4, 0.05, 0.06], [0.6, 0.02, 0.02], [1.35, 0.01, 0.01]])],
  },
  "swept flying wing with winglets": {
    surfaces: [mirrored([[0, 0, 0, 0.3, 0], [0.36, 0.8, 0, 0.18, -0.07], [0.45, 0.82, 0.15, 0.1, 0]], { shape: naca("23009") })],
    bodies: [],
  },
  canard: {
    surfaces: [mirrored([[0.3, 0, 0, 0.25], [0.45, 0.7, 0, 0.15]]), mirrored([[-0.35, 0, 0.01, 0.12], [-0.35, 0.25, 0.01, 0.12]], { kind: "canard" }),
      mirrored([[0.45, 0.7, 0, 0.15], [0.52, 0.7, 0.15, 0.1]], { kind: "fin", path: "tips" })],
    bodies: [fuselage([-0.45, 0, 0], [[0, 0.01, 0.01], [0.15, 0.08, 0.08], [0.9, 0.08, 0.08], [1, 0.04, 0.04]])],
  },
  biplane: {
    surfaces: [mirrored([[0, 0, 0, 0.2], [0, 0.6, 0.03, 0.2]], { path: "lower" }), mirrored([[-0.08, 0, 0.2, 0.2], [-0.08, 0.65, 0.2, 0.2]], { path: "upper" }),
      mirrored([[0.6, 0, 0.05, 0.13], [0.63, 0.22, 0.05, 0.1]], { kind: "tailplane" })],
    bodies: [hull],
  },
  "centre wing and outer panels, two booms": {
    surfaces: [mirrored([[0, 0, 0, 0.26], [0, 0.25, 0, 0.26]], { path: "centre" }),
      mirrored([[0, 0.25, 0, 0.26], [0.05, 0.75, 0.04, 0.16]], { path: "outer" }),
      mirrored([[0.8, 0, 0.02, 0.13], [0.8, 0.25, 0.02, 0.13]], { kind: "tailplane" }),
      mirrored([[0.78, 0.25, -0.05, 0.16], [0.82, 0.25, 0.14, 0.1]], { kind: "fin", path: "fins" })],
    bodies: [fuselage([-0.35, 0, 0], [[0, 0.02, 0.02], [0.2, 0.1, 0.12], [0.5, 0.1, 0.12], [0.7, 0.02, 0.02]]),
      ...[0.25, -0.25].map((y) => ({ ...fuselage([0.05, y, -0.01], [[0, 0.02, 0.02], [0.9, 0.02, 0.02]], `boom${y}`), kind: "boom" as const }))],
  },
  "delta": {
    surfaces: [mirrored([[0, 0, 0, 0.6], [0.5, 0.4, 0, 0.1]])],
    bodies: [],
  },
  "elliptic wing of ten panels, gap over the fuselage": {
    surfaces: [
      mirrored(Array.from({ length: 11 }, (_, i): Row => {
        const angle = ((Math.PI / 2) * i) / 10;
        const chord = 0.25 * Math.max(0.08, Math.cos(angle));
        return [-chord / 3, 0.048 + 0.65 * Math.sin(angle), 0, chord];
      })),
      mirrored([[0.55, 0, 0.02, 0.13], [0.57, 0.22, 0.02, 0.1]], { kind: "tailplane" }),
    ],
    bodies: [fuselage([-0.3, 0, 0], [[0, 0.05, 0.05], [0.1, 0.096, 0.1], [0.5, 0.096, 0.1], [1, 0.03, 0.04]])],
  },
};
