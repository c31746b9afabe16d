import type { Vec3 } from "../../model/design/geometry";
import { addPoint, addSquare, type Sum } from "./moments";

/**
 * Moments of a plane section (or of its outline) in its own axes u, w, about its own origin: ∫dA, ∫u dA, ∫w dA,
 * ∫u² dA, ∫w² dA, ∫uw dA, with dA an element of area (or of length).
 */
export interface Slice {
  readonly size: number;
  readonly u: number;
  readonly w: number;
  readonly uu: number;
  readonly ww: number;
  readonly uw: number;
}

/** Points and weights of four-point Gauss quadrature on 0 to 1: exact for polynomials up to the seventh degree. */
export const gauss: readonly (readonly [at: number, weight: number])[] = [
  [0.06943184420297371, 0.17392742256872693],
  [0.33000947820757187, 0.32607257743127307],
  [0.6699905217924281, 0.32607257743127307],
  [0.9305681557970263, 0.17392742256872693],
];

export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

export const mixVec = (a: Vec3, b: Vec3, t: number): Vec3 => [mix(a[0], b[0], t), mix(a[1], b[1], t), mix(a[2], b[2], t)];

/** Adds `weight` times a slice whose origin stands at `at`, with its axes along the unit vectors `u` and `w`. */
export function addSlice(to: Sum, weight: number, slice: Slice, at: Vec3, u: Vec3, w: Vec3): void {
  if (slice.size === 0) return;
  const mass = weight * slice.size;
  const cu = slice.u / slice.size;
  const cw = slice.w / slice.size;
  addPoint(to, mass, at[0] + cu * u[0] + cw * w[0], at[1] + cu * u[1] + cw * w[1], at[2] + cu * u[2] + cw * w[2]);
  const uu = slice.uu - slice.size * cu * cu;
  const ww = slice.ww - slice.size * cw * cw;
  const uw = slice.uw - slice.size * cu * cw;
  // uu·u² + ww·w² + uw·(u·w + w·u), the last written by squares: (u + w)² − u² − w²
  addSquare(to, weight * (uu - uw), u);
  addSquare(to, weight * (ww - uw), w);
  addSquare(to, weight * uw, [u[0] + w[0], u[1] + w[1], u[2] + w[2]]);
}

/** The same outline drawn `c` times as large. */
export function enlargedOutline(s: Slice, c: number): Slice {
  return enlarged(s, c, c);
}

/** The same area drawn `c` times as large. */
export function enlargedArea(s: Slice, c: number): Slice {
  return enlarged(s, c * c, c);
}

function enlarged(s: Slice, size: number, c: number): Slice {
  const first = size * c;
  const second = first * c;
  return { size: s.size * size, u: s.u * first, w: s.w * first, uu: s.uu * second, ww: s.ww * second, uw: s.uw * second };
}

export function mixSlices(a: Slice, b: Slice, t: number): Slice {
  if (a === b) return a;
  return {
    size: mix(a.size, b.size, t),
    u: mix(a.u, b.u, t),
    w: mix(a.w, b.w, t),
    uu: mix(a.uu, b.uu, t),
    ww: mix(a.ww, b.ww, t),
    uw: mix(a.uw, b.uw, t),
  };
}

/** A circular ring about its centre; `inner` 0 is a disc. */
export function ring(outer: number, inner: number): Slice {
  const second = (Math.PI / 64) * (outer ** 4 - inner ** 4);
  return { size: (Math.PI / 4) * (outer ** 2 - inner ** 2), u: 0, w: 0, uu: second, ww: second, uw: 0 };
}

export function ellipse(width: number, height: number): Slice {
  const size = (Math.PI / 4) * width * height;
  return { size, u: 0, w: 0, uu: (size * width ** 2) / 16, ww: (size * height ** 2) / 16, uw: 0 };
}

export function rectangle(width: number, height: number): Slice {
  const size = width * height;
  return { size, u: 0, w: 0, uu: (size * width ** 2) / 12, ww: (size * height ** 2) / 12, uw: 0 };
}
