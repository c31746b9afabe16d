import type { Body, Surface } from "../../model/design/geometry";
import { fillOf, gapOf } from "./gap";
import { measure } from "./measure";
import { sidesOf } from "./sides";

/** What coefficients are referred to: all surfaces of kind wing with `reference`, both sides, projected on the plan. */
export interface ReferenceGeometry {
  readonly area: number;
  /** From tip to tip. */
  readonly span: number;
  /** c̄ = ∫c² dy / ∫c dy */
  readonly meanChord: number;
  /** Leading edge of the mean chord: the area-weighted quarter-chord x less c̄/4. */
  readonly meanChordX: number;
  readonly aspectRatio: number;
  /** Paths of the wings whose roots stand apart, and whether the gap counts as wing. */
  readonly gaps: readonly { readonly path: string; readonly carried: boolean }[];
}

/** Undefined where no reference wing has any area on the plan. */
export function referenceGeometry(surfaces: readonly Surface[], bodies: readonly Body[]): ReferenceGeometry | undefined {
  const wings = surfaces.filter(({ kind, reference }) => kind === "wing" && reference);
  const gaps = wings.flatMap((wing) => gapOf(wing, surfaces, bodies) ?? []);
  const pieces = [
    ...wings.flatMap((wing) => sidesOf(wing).sides.flatMap((side) => side.pieces)),
    ...gaps.filter(({ carried }) => carried).flatMap((gap) => Object.values(fillOf(gap))),
  ];
  const { area, chordSquared, quarter } = measure(pieces, "plan");
  const ys = pieces.flatMap(({ inner, outer }) => [inner.leadingEdge[1], outer.leadingEdge[1]]);
  const span = Math.max(...ys) - Math.min(...ys);
  if (!(area > 0 && Number.isFinite(area) && Number.isFinite(span))) return undefined;
  const meanChord = chordSquared / area;
  return {
    area,
    span,
    meanChord,
    meanChordX: quarter[0] / area - meanChord / 4,
    aspectRatio: span ** 2 / area,
    gaps: gaps.map(({ path, carried }) => ({ path, carried })),
  };
}
