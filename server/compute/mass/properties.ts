import type { Vec3 } from "../../model/design/geometry";
import type { MassElement } from "./element";
import { sumMoments, type Moments } from "./moments";

/**
 * Moments and products of inertia, kg·m², axes x aft, y right, z up: xx = ∫(y² + z²) dm (roll), yy (pitch), zz (yaw);
 * xy = ∫xy dm, xz and yz likewise, so the tensor has their negatives off its diagonal. With x forward and z down, xz is
 * the same.
 */
export interface Inertia<N = number> {
  readonly xx: N;
  readonly yy: N;
  readonly zz: N;
  readonly xy: N;
  readonly xz: N;
  readonly yz: N;
}

export interface MassProperties<N = number> {
  /** kg. */
  readonly mass: N;
  /** From the datum, m. */
  readonly cg: Vec3<N>;
  /** About the CG. */
  readonly inertia: Inertia<N>;
}

/** Mass, CG and inertia about the CG of all elements together; undefined if they weigh nothing. */
export function massProperties(elements: readonly MassElement[]): MassProperties | undefined {
  return propertiesOf(sumMoments(elements.map((e) => e.moments)));
}

export function propertiesOf(m: Moments): MassProperties | undefined {
  if (!(m.mass > 0)) return undefined;
  const cg = [m.x / m.mass, m.y / m.mass, m.z / m.mass] as const;
  return { mass: m.mass, cg, inertia: inertiaOf(about(m, cg)) };
}

/** First-order change of the properties of `m` when its moments change by `change`. */
export function propertiesChange(m: Moments, change: Moments): MassProperties {
  const cg = [m.x / m.mass, m.y / m.mass, m.z / m.mass] as const;
  const moved = [
    (change.x - cg[0] * change.mass) / m.mass,
    (change.y - cg[1] * change.mass) / m.mass,
    (change.z - cg[2] * change.mass) / m.mass,
  ] as const;
  // The CG's own shift counts only to second order: ∫(r − cg) dm is nothing.
  return { mass: change.mass, cg: moved, inertia: inertiaOf(about(change, cg)) };
}

type Second = Pick<Moments, "xx" | "yy" | "zz" | "xy" | "yz" | "xz">;

/** Second moments about any place: parallel axes. */
function about(m: Moments, [x, y, z]: Vec3): Second {
  return {
    xx: m.xx - 2 * x * m.x + m.mass * x * x,
    yy: m.yy - 2 * y * m.y + m.mass * y * y,
    zz: m.zz - 2 * z * m.z + m.mass * z * z,
    xy: m.xy - x * m.y - y * m.x + m.mass * x * y,
    yz: m.yz - y * m.z - z * m.y + m.mass * y * z,
    xz: m.xz - x * m.z - z * m.x + m.mass * x * z,
  };
}

function inertiaOf({ xx, yy, zz, xy, yz, xz }: Second): Inertia {
  return { xx: yy + zz, yy: xx + zz, zz: xx + yy, xy, xz, yz };
}
