import type { Control } from "../../model/design/geometry";
import { chordPlaces, fitted } from "../lattice/camber";
import type { ControlPoint, LatticeSolution } from "../lattice/solve-lattice";
import { flapTheory } from "../section-air/flapped";

/**
 * Slopes dz/dx at a strip's control points for a radian of trailing edge down behind a hinge: −1 there, with a constant and a
 * linear part added so that in plane flow the turn of the angle of no lift and the moment are just those of thin-section
 * theory (H. Glauert, ARC R&M 1095, 1927), with however few rows.
 */
export function deflectionSlopes(chordShare: number, rows: number): Float64Array {
  const { effect, moment } = flapTheory(chordShare);
  const slopes = chordPlaces(rows).control.map((x) => (x > 1 - chordShare ? -1 : 0));
  return fitted(slopes, { zeroLiftAngle: -effect, moment });
}

/** How much of a strip's length a control takes, and its share of the chord there. */
export interface Coverage {
  readonly share: number;
  readonly chord: number;
}

/** Ends this near the root or the tip reach it. */
const near = 1e-6;

/**
 * What a control covers of a strip whose ends lie at `along`. One that begins at the root goes on between the roots if both
 * halves are one piece or the whole surface turns.
 */
export function coverage({ along, chord, joined, allMoving }: Control, strip: readonly [number, number]): Coverage {
  const [low, high] = strip[0] < strip[1] ? strip : [strip[1], strip[0]];
  const [inner, outer] = along[0] <= along[1] ? [0, 1] : [1, 0];
  const [from, to] = [along[inner], along[outer]];
  const start = (joined || allMoving) && from <= near ? -Infinity : from;
  const end = to >= 1 - near ? Infinity : to;
  const [a, b] = [Math.max(low, start), Math.min(high, end)];
  if (!(b > a)) return { share: 0, chord: chord[inner] };
  const place = to > from ? Math.min(1, Math.max(0, ((a + b) / 2 - from) / (to - from))) : 0;
  return { share: (b - a) / (high - low), chord: allMoving ? 1 : chord[inner] + place * (chord[outer] - chord[inner]) };
}

/** A control turned by an angle, rad, trailing edge down positive; on a left half by `left` where that differs. */
export interface Deflection {
  /** Path of its surface. */
  readonly surface: string;
  readonly control: Control;
  readonly angle: number;
  readonly left?: number;
}

/** Adds the slopes of a control turned on each strip by an angle of its own, trailing edge down positive, to a field of strips × rows. */
export function addTurned<S extends { readonly path: string; readonly along: readonly [number, number] }>(
  field: Float64Array, { strips, rows }: { readonly strips: readonly S[]; readonly rows: number },
  { surface, control }: Pick<Deflection, "surface" | "control">, angle: (strip: S) => number,
): void {
  strips.forEach((strip, s) => {
    if (strip.path !== surface) return;
    const { share, chord } = coverage(control, strip.along);
    if (share === 0) return;
    const turned = share * angle(strip);
    deflectionSlopes(chord, rows).forEach((slope, k) => (field[s * rows + k] += turned * slope));
  });
}

/**
 * The slopes that deflections give the control points of a lattice, for its `respond`. Where one side of a lattice stands for
 * both, that is the mean of the two: what lifts and pitches.
 */
export function deflectedSlope(
  { strips, rows, symmetric }: Pick<LatticeSolution, "strips" | "rows" | "symmetric">, deflections: readonly Deflection[],
): (at: ControlPoint) => number {
  const field = new Float64Array(strips.length * rows);
  for (const { surface, control, angle, left } of deflections) {
    addTurned(field, { strips, rows }, { surface, control }, ({ side }) => (side === "left" ? left ?? angle : angle));
  }
  return ({ strip, row }) => {
    const own = field[strip * rows + row];
    return symmetric ? (own + field[(strip + 1) * rows + row]) / 2 : own;
  };
}
