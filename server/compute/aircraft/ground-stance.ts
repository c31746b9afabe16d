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

type Footing = Pick<Wheel, "contact" | "kind" | "steer">;

/**
 * Main wheels are the ones farthest from the plane of symmetry, those that neither steer nor are skids before others; of the rest
 * the one farthest ahead or behind carries too. Undefined without main wheels and another.
 */
export function groundStance(wheels: readonly Footing[]): GroundStance | undefined {
  const plain = wheels.filter(({ kind, steer }) => kind === "wheel" && !steer);
  const rolling = plain.some(({ contact: [, y] }) => Math.abs(y) > 1e-9) ? plain : wheels;
  const widest = Math.max(0, ...rolling.map(({ contact: [, y] }) => Math.abs(y)));
  const mains = rolling.filter(({ contact: [, y] }) => Math.abs(y) > Math.max(widest / 2, 1e-9));
  const others = wheels.filter((wheel) => !mains.includes(wheel));
  if (mains.length === 0 || others.length === 0) return undefined;
  const mean = (axis: 0 | 2) => mains.reduce((sum, { contact }) => sum + contact[axis], 0) / mains.length;
  const [x, z] = [mean(0), mean(2)];
  const other = others.reduce((far, wheel) => (Math.abs(wheel.contact[0] - x) > Math.abs(far.contact[0] - x) ? wheel : far));
  const [ahead, lower] = [x - other.contact[0], z - other.contact[2]];
  if (!(Math.abs(ahead) > 0)) return undefined;
  // A nose wheel that reaches lower than the main wheels holds the nose up.
  return { x, z, angle: Math.atan(lower / ahead), noseWheel: ahead > 0 };
}
