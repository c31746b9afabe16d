import type { Vec3 } from "../../model/design/geometry";

/**
 * How a mass is spread in space: ∫dm, ∫x dm … ∫xz dm about the datum. Of a shape at unit density, `mass` is its length
 * (m), wetted area (m²) or volume (m³). Moments of several things add.
 */
export interface Moments {
  readonly mass: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly yz: number;
  readonly xz: number;
}

/** Moments being summed. */
export type Sum = { -readonly [K in keyof Moments]: number };

export const noMoments = (): Sum => ({ mass: 0, x: 0, y: 0, z: 0, xx: 0, yy: 0, zz: 0, xy: 0, yz: 0, xz: 0 });

export function addPoint(to: Sum, mass: number, x: number, y: number, z: number): void {
  to.mass += mass;
  to.x += mass * x;
  to.y += mass * y;
  to.z += mass * z;
  to.xx += mass * x * x;
  to.yy += mass * y * y;
  to.zz += mass * z * z;
  to.xy += mass * x * y;
  to.yz += mass * y * z;
  to.xz += mass * x * z;
}

/** Adds `factor` times a vector's outer product with itself to the second moments. */
export function addSquare(to: Sum, factor: number, [x, y, z]: Vec3): void {
  to.xx += factor * x * x;
  to.yy += factor * y * y;
  to.zz += factor * z * z;
  to.xy += factor * x * y;
  to.yz += factor * y * z;
  to.xz += factor * x * z;
}

export function addMoments(to: Sum, from: Moments, factor = 1): void {
  to.mass += factor * from.mass;
  to.x += factor * from.x;
  to.y += factor * from.y;
  to.z += factor * from.z;
  to.xx += factor * from.xx;
  to.yy += factor * from.yy;
  to.zz += factor * from.zz;
  to.xy += factor * from.xy;
  to.yz += factor * from.yz;
  to.xz += factor * from.xz;
}

export function sumMoments(all: Iterable<Moments>): Moments {
  const sum = noMoments();
  for (const m of all) addMoments(sum, m);
  return sum;
}

export function scaled(moments: Moments, factor: number): Moments {
  const sum = noMoments();
  addMoments(sum, moments, factor);
  return sum;
}

/** The same mass moved by `dx` along x. */
export function movedAft(m: Moments, dx: number): Moments {
  return {
    ...m,
    x: m.x + m.mass * dx,
    xx: m.xx + 2 * dx * m.x + m.mass * dx * dx,
    xy: m.xy + dx * m.y,
    xz: m.xz + dx * m.z,
  };
}
