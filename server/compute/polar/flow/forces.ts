import type { Panels } from "../outline/panels";

/** Lift and moment about the quarter chord, nose up, from the pressure of node speeds; flow at infinity is 1. */
export function pressureForces({ count, x, y }: Panels, speed: ArrayLike<number>, angle: number): { readonly lift: number; readonly moment: number } {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let lift = 0;
  let moment = 0;
  for (let i = 0; i < count - 1; i++) {
    const [before, after] = [1 - speed[i] ** 2, 1 - speed[i + 1] ** 2];
    const mean = (before + after) / 2;
    const tilt = (after - before) / 12;
    const [dx, dy] = [x[i + 1] - x[i], y[i + 1] - y[i]];
    lift += mean * (dx * c + dy * s);
    const [mx, my] = [(x[i] + x[i + 1]) / 2 - 0.25, (y[i] + y[i + 1]) / 2];
    moment -= mean * (mx * dx + my * dy) + tilt * (dx * dx + dy * dy);
  }
  return { lift, moment };
}
