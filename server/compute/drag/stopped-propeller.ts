import type { Motor, Powerplant, Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf } from "../propeller/blade";
import { propellerMap, type PropellerMap } from "../propeller/propeller-map";
import { bracketedRoot } from "../root";

/** Of a long plate square to the flow with free ends, on the blade's area (S. F. Hoerner, Fluid-Dynamic Drag, 1965; from memory). */
const broadside = 1.1;

/** Of a feathered blade, on its area (D. P. Raymer, Aircraft Design, ch. 13; from memory). */
const feathered = 0.1;

/**
 * Drag area of a propeller held still across its disc, m²: 1.1 cos²β on the area of each piece of each blade, β its angle to
 * the disc (Hoerner). Raymer's 0.8 on the whole area is the same at 31°. The hub and what stands behind the blades are not in it.
 */
export function stoppedPropellerDrag(propeller: Propeller): number {
  const { count, elements } = bladeOf(propeller);
  return elements.reduce((sum, { chord, width, angle }) => sum + count * chord * width * broadside * Math.cos(angle) ** 2, 0);
}

/** Drag area of blades folded back, m²: as feathered ones. How close they lie to the body is not known. */
export function foldedPropellerDrag(propeller: Propeller): number {
  const { count, elements } = bladeOf(propeller);
  return elements.reduce((sum, { chord, width }) => sum + count * chord * width * feathered, 0);
}

export interface Windmill {
  /** Drag over dynamic pressure, m². */
  readonly area: number;
  /** rad/s */
  readonly rotation: number;
}

export interface Wind {
  /** Along the shaft, m/s. */
  readonly speed: number;
  readonly air: Air;
  /** Torque it takes to turn the shaft, N m; 0 when absent. */
  readonly friction?: number;
  /** Of that propeller, where one is at hand. */
  readonly map?: PropellerMap;
}

/**
 * A propeller that the flight turns: at the rotation, the greatest there is, where blade elements and momentum give the
 * torque that friction takes. Undefined where it does not start to turn or keep turning: then it stands still. The blade model is
 * held to tunnel tests that end a little past zero thrust; beyond, its sections are guesses. The turbulent wake of a strongly
 * braking disc is not modelled, nor a controller that brakes.
 */
export function windmillingPropeller(propeller: Propeller, { speed, air, friction = 0, map = propellerMap(propeller) }: Wind): Windmill | undefined {
  if (!(speed > 0 && propeller.pitch > 0 && propeller.diameter > 0)) return undefined;
  const load = (rotation: number) => map.at({ rotation, speed, air });
  const surplus = (rotation: number) => load(rotation).torque + friction;
  const screw = (2 * Math.PI * speed) / propeller.pitch;
  for (let high = fastest * screw; high > slowest * screw; high /= step) {
    const rotation = bracketedRoot(surplus, high / step, high, 1e-6 * screw);
    if (rotation === undefined) continue;
    return { rotation, area: -load(rotation).thrust / (0.5 * air.density * speed ** 2) };
  }
  return undefined;
}

/** Rotations that are tried, over that of a screw in wood, and their ratio. */
const [fastest, slowest, step] = [3, 0.1, 1.2];

/** Torque a motor without current takes at the propeller's shaft, N m: that of its no-load current. */
export const windmillFriction = ({ noLoadCurrent, kv, gearRatio }: Pick<Motor, "noLoadCurrent" | "kv" | "gearRatio">): number =>
  (noLoadCurrent / kv) * gearRatio;

/** Drag of a propeller whose motor gives nothing: folded back if it folds, else turned by the flight, else standing still. */
export function deadPropellerDrag({ propeller, motor }: Pick<Powerplant, "propeller" | "motor">, wind: Omit<Wind, "friction">): { readonly area: number; readonly how: string } {
  if (!propeller) return { area: 0, how: "no propeller" };
  if (propeller.folding) return { area: foldedPropellerDrag(propeller), how: "folded back, 0.1 on the blades' area as feathered (Raymer)" };
  const turning = windmillingPropeller(propeller, { ...wind, friction: motor && windmillFriction(motor) });
  if (turning) return { area: turning.area, how: "turned by the flight against the motor's no-load torque" };
  return { area: stoppedPropellerDrag(propeller), how: "standing still, 1.1 cos²β on the blades' area (Hoerner)" };
}
