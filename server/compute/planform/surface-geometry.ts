import type { Body, Surface, Vec3 } from "../../model/design/geometry";
import { fillOf, gapOf } from "./gap";
import { measure } from "./measure";
import { sidesOf, spanOf } from "./sides";
import { quarterPoint, type Piece } from "./station";

/** One surface with all its sides. Lengths and areas are as built unless they say `projected`. */
export interface SurfaceGeometry {
  readonly area: number;
  readonly projectedArea: number;
  /** Sum of the panels' lengths of all sides, and the gap if it is carried through. */
  readonly span: number;
  /** Greatest extent in y. */
  readonly projectedSpan: number;
  readonly meanChord: number;
  /** Quarter of the mean chord; y that of one side (the right or only one). */
  readonly quarterPoint: Vec3;
  /** Tip chord over root chord. */
  readonly taper: number;
  /** Of the quarter-chord line from root to tip, rad, aft positive. */
  readonly sweep: number;
  /** S cos²Γ and S sin²Γ (P. E. Purser, J. P. Campbell, NACA Report 823): what counts in pitch and in yaw. */
  readonly effectiveAreas: { readonly pitch: number; readonly yaw: number };
}

/** Undefined for a surface without area. Without `surfaces` and `bodies` an open gap counts only by `carryThrough = yes`. */
export function surfaceGeometry(
  surface: Surface, surfaces: readonly Surface[] = [], bodies: readonly Body[] = [],
): SurfaceGeometry | undefined {
  const { sides } = sidesOf(surface);
  const gap = gapOf(surface, surfaces, bodies);
  const fills = gap?.carried ? fillOf(gap) : undefined;
  const pieces = sides.flatMap(({ side, pieces }) => (fills && side !== "only" ? [fills[side], ...pieces] : pieces));
  const first = sides.find(({ side, pieces }) => side !== "left" && pieces.length > 0) ?? sides.find(({ pieces }) => pieces.length > 0);
  const built = measure(pieces, "along");
  if (!first || !(built.area > 0) || !Number.isFinite(built.area)) return undefined;
  const one = measure(fills && first.side !== "only" ? [fills[first.side], ...first.pieces] : first.pieces, "along");
  const ys = pieces.flatMap(({ inner, outer }) => [inner.leadingEdge[1], outer.leadingEdge[1]]);
  return {
    area: built.area,
    projectedArea: measure(pieces, "plan").area,
    span: pieces.reduce((sum, piece) => sum + spanOf(piece), 0),
    projectedSpan: Math.max(...ys) - Math.min(...ys),
    meanChord: built.chordSquared / built.area,
    quarterPoint: [built.quarter[0] / built.area, one.quarter[1] / one.area, built.quarter[2] / built.area],
    ...taperAndSweep(first.pieces),
    effectiveAreas: { pitch: built.level, yaw: built.upright },
  };
}

function taperAndSweep(pieces: readonly Piece[]): { taper: number; sweep: number } {
  const [root, tip] = [pieces[0].inner, pieces[pieces.length - 1].outer];
  const length = pieces.reduce((sum, piece) => sum + spanOf(piece), 0);
  return {
    taper: root.chord > 0 ? tip.chord / root.chord : Infinity,
    sweep: Math.atan2(quarterPoint(tip)[0] - quarterPoint(root)[0], length),
  };
}
