import type { LateralFrame, Steering } from "../../server/compute/motor-out/balance";
import type { Asymmetry } from "../../server/compute/motor-out/minimum-control-speed";
import type { Plant, PlantLoad } from "../../server/compute/motor-out/plant";

export const degree = Math.PI / 180;

const steering = (side: number, roll: number, yaw: number, most: number): Steering => ({ side, roll, yaw, throw: { negative: most * degree, positive: most * degree } });

/** A model twin of 3 kg, invented: an upright fin, dihedral, ailerons with some adverse yaw. */
export const frame = {
  mass: 3, density: 1.225, area: 0.5, span: 1.8,
  sideslip: { side: -0.35, roll: -0.05, yaw: 0.06 },
  aileron: steering(0, -0.3, 0.01, 20),
  rudder: steering(0.15, 0.005, -0.06, 25),
} satisfies LateralFrame;

export const none: PlantLoad = { thrust: 0 };

/** Straight ahead, `y` to the right of the balance point. */
export const plant = (path: string, y: number, clockwise: boolean, load: PlantLoad, deadDrag = 0): Plant =>
  ({ path, hub: [-0.2, y, 0], thrustAxis: [-1, 0, 0], clockwise, running: () => load, deadDrag: () => deadDrag });

export const twinOf = (plants: readonly Plant[]): Asymmetry => ({ plants, balance: [0, 0, 0], frame: () => frame });

/** Where blades go down, or how both turn, seen from behind. */
export type Turning = "inboard" | "outboard" | "clockwise" | "anticlockwise";

/** Two motors of 12 N standing, falling with speed, nose up to the air; `splay` turns the shafts outward. */
export function twin(turning: Turning, { deadDrag = 0, splay = 0 } = {}): Asymmetry {
  const side = (path: string, sense: 1 | -1, clockwise: boolean): Plant => ({
    ...plant(path, sense * 0.3, clockwise, none, deadDrag),
    thrustAxis: [-Math.cos(splay), sense * Math.sin(splay), 0],
    running: (speed) => ({ thrust: Math.max(0, 12 - 0.4 * speed), torque: 0.25, bladeOffset: 0.02 }),
  });
  const left = turning === "clockwise" || turning === "inboard";
  const right = turning === "clockwise" || turning === "outboard";
  return twinOf([side("left", -1, left), side("right", 1, right)]);
}
