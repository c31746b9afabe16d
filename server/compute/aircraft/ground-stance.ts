import type { Wheel } from "../../model/design/geometry";

/** How an aeroplane stands on its wheels, seen from the side. */
export interface GroundStance {
  /** Where the main wheels touch, m. */
  readonly x: number;
  readonly z: number;
  /** Of the x axis to the ground, nose up, rad. */
  readonly angle: number;
  /** Does a wheel or skid stand ahead of the main wheels, so that the nose must be lifted off it? */
  readonly noseWheel: boolean;
}

/** Wheels nearer than this to the plane of symmetry stand in it: share of the widest. */
const middle = 0.1;

/**
 * Main wheels are the ones farthest from the plane of symmetry; of the others the one farthest ahead or behind carries too.
 * Undefined without main wheels and another.
 */
export function groundStance(wheels: readonly Pick<Wheel, "contact">[]): GroundStance | undefined {
  const widest = Math.max(0, ...wheels.map(({ contact: [, y] }) => Math.abs(y)));
  const isMain = ({ contact: [, y] }: Pick<Wheel, "contact">) => Math.abs(y) > Math.max(middle * widest, 1e-9) && Math.abs(y) > 0.5 * widest;
  const mains = wheels.filter(isMain);
  const others = wheels.filter((wheel) => !isMain(wheel));
  if (mains.length === 0 || others.length === 0) return undefined;
  const mean = (axis: 0 | 2) => mains.reduce((sum, { contact }) => sum + contact[axis], 0) / mains.length;
  const [x, z] = [mean(0), mean(2)];
  const other = others.reduce((far, wheel) => (Math.abs(wheel.contact[0] - x) > Math.abs(far.contact[0] - x) ? wheel : far));
  const [ahead, lower] = [x - other.contact[0], z - other.contact[2]];
  if (!(Math.abs(ahead) > 0)) return undefined;
  // A nose wheel that reaches lower than the main wheels holds the nose up.
  return { x, z, angle: Math.atan(lower / ahead), noseWheel: ahead > 0 };
}
