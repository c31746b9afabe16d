import type { Body, Load, Panel, SectionShape, Spar, Surface, Vec3 } from "../../../../server/model/design/geometry";
import type { MassParts } from "../../../../server/compute/mass/element";

export const naca = (digits: string): SectionShape => ({ type: "naca", digits });

export interface PanelSize {
  readonly from?: Vec3;
  readonly span: number;
  readonly chord: readonly [number, number];
  /** Leading edge of the tip aft of the root's. */
  readonly offset?: number;
  readonly dihedral?: number;
  readonly twist?: readonly [number, number];
  readonly shape?: SectionShape;
  readonly weight?: number;
  readonly name?: string;
}

/** A panel of the right side. */
export function panel({ from = [0, 0, 0], span, chord, offset = 0, dihedral = 0, twist = [0, 0], shape = naca("0012"), weight, name = "only" }: PanelSize): Panel {
  const section = { shape };
  return {
    name,
    inner: { leadingEdge: from, chord: chord[0], twist: twist[0], section },
    outer: {
      leadingEdge: [from[0] + offset, from[1] + span * Math.cos(dihedral), from[2] + span * Math.sin(dihedral)],
      chord: chord[1], twist: twist[1], section,
    },
    ...(weight === undefined ? {} : { weight }),
  };
}

export const imageOf = ([x, y, z]: Vec3): Vec3 => [x, -y, z];

export const imagePanel = (p: Panel): Panel => ({
  ...p,
  inner: { ...p.inner, leadingEdge: imageOf(p.inner.leadingEdge) },
  outer: { ...p.outer, leadingEdge: imageOf(p.outer.leadingEdge) },
});

type Extras = Partial<Pick<Surface, "weight" | "balance" | "skin" | "spars" | "path">>;

/** Both sides from the panels of the right. */
export function wing(panels: readonly Panel[], extras: Extras = {}): Surface {
  return {
    path: "main", kind: "wing", reference: true, carryThrough: "auto", ventral: false, spars: [], controls: [], ...extras,
    halves: [{ side: "right", panels }, { side: "left", panels: panels.map(imagePanel) }],
  };
}

/** One side alone, as a fin or half a wing on the bench. */
export function half(panels: readonly Panel[], extras: Extras = {}): Surface {
  return { ...wing([], extras), halves: [{ side: "right", panels }] };
}

export const tube = (path: string, start: Vec3, end: Vec3, outer: number, inner: number, density: number): Spar => ({
  path, start, end, density, section: { type: "tube", outer: [outer, outer], inner: [inner, inner] },
});

export function body(stations: Body["stations"], extras: Partial<Body> = {}): Body {
  return { path: "hull", kind: "fuselage", nose: [0, 0, 0], shape: "round", stations, ...extras };
}

export const load = (path: string, weight: number, at: Vec3, size?: Vec3): Load => ({ path, kind: "item", weight, at, ...(size ? { size } : {}) });

export const parts = (some: Partial<MassParts> = {}): MassParts => ({ surfaces: [], bodies: [], members: [], loads: [], allowance: 0, ...some });
