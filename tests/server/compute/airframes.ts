import type { Body, Half, Panel, SectionShape, Station, Surface, SurfaceKind, Vec3 } from "../../../server/model/design/geometry";

/** Leading edge x, y, z, chord, and twist in radians. */
export type Row = readonly [x: number, y: number, z: number, chord: number, twist?: number];

export interface SurfaceForm {
  readonly path?: string;
  readonly kind?: SurfaceKind;
  readonly shape?: SectionShape;
  readonly carryThrough?: Surface["carryThrough"];
  readonly reference?: boolean;
}

export const flat: SectionShape = { type: "flat", thickness: 0.03 };

const stationOf = ([x, y, z, chord, twist = 0]: Row, shape: SectionShape): Station => ({
  leadingEdge: [x, y, z], chord, twist, section: { shape },
});

export function panelsOf(rows: readonly Row[], shape: SectionShape = flat): Panel[] {
  return rows.slice(1).map((row, i) => ({ name: `p${i}`, inner: stationOf(rows[i], shape), outer: stationOf(row, shape) }));
}

const image = ([x, y, z, chord, twist]: Row): Row => [x, -y, z, chord, twist];

function surface(halves: readonly Half[], form: SurfaceForm): Surface {
  return {
    path: form.path ?? form.kind ?? "main", kind: form.kind ?? "wing", halves, reference: form.reference ?? true,
    carryThrough: form.carryThrough ?? "auto", ventral: false, spars: [], controls: [],
  };
}

/** A mirrored surface from the stations of its right side, root to tip. */
export function mirrored(rows: readonly Row[], form: SurfaceForm = {}): Surface {
  return surface([
    { side: "right", panels: panelsOf(rows, form.shape) },
    { side: "left", panels: panelsOf(rows.map(image), form.shape) },
  ], form);
}

/** One that is not mirrored. */
export function single(rows: readonly Row[], form: SurfaceForm = {}): Surface {
  return surface([{ side: "only", panels: panelsOf(rows, form.shape) }], form);
}

/** A straight-tapered wing about x = 0 at the root leading edge; `tip` is the tip leading edge aft of the root's. */
export const tapered = (span: number, root: number, tip: number, offset: number, form: SurfaceForm = {}): Surface =>
  mirrored([[0, 0, 0, root], [offset, span / 2, 0, tip]], form);

export function fuselage(nose: Vec3, stations: readonly (readonly [x: number, width: number, height: number])[], path = "hull"): Body {
  return { path, kind: "fuselage", nose, shape: "round", stations: stations.map(([x, width, height]) => ({ x, width, height, z: 0 })) };
}

/** Everything moved by one vector and grown by one factor about the origin. */
export function moved(surfaces: readonly Surface[], by: Vec3, factor = 1): Surface[] {
  const at = ({ leadingEdge: [x, y, z], chord, ...rest }: Station): Station => ({
    ...rest, chord: chord * factor, leadingEdge: [x * factor + by[0], y * factor + by[1], z * factor + by[2]],
  });
  return surfaces.map((s) => ({
    ...s,
    halves: s.halves.map((half) => ({ ...half, panels: half.panels.map((p) => ({ ...p, inner: at(p.inner), outer: at(p.outer) })) })),
  }));
}

export const movedBodies = (bodies: readonly Body[], by: Vec3, factor = 1): Body[] =>
  bodies.map((body) => ({
    ...body,
    nose: [body.nose[0] * factor + by[0], body.nose[1] * factor + by[1], body.nose[2] * factor + by[2]],
    stations: body.stations.map(({ x, width, height, z }) => ({ x: x * factor, width: width * factor, height: height * factor, z: z * factor })),
  }));
