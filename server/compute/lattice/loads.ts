import type { Lattice } from "./lattice";

/** What the air does to the whole airframe, over dynamic pressure: forces m², moments m³. */
export interface Response {
  readonly lift: number;
  /** To the right. */
  readonly side: number;
  /** About the x axis, right wing down. */
  readonly roll: number;
  /** About a line across at x = `about`, nose up. */
  readonly moment: number;
  /** About a vertical at x = `about`, nose right. */
  readonly yaw: number;
  /** Of every horseshoe of the solved side, over flight speed, m. */
  readonly circulation: Float64Array;
}

/** Forces of the undisturbed stream on the bound lines (Kutta and Joukowski); drag is of second order and not in it. */
export function loadsOf({ elements: e, symmetric }: Lattice, circulation: Float64Array, about: number): Response {
  const sum = { lift: 0, side: 0, roll: 0, moment: 0, yaw: 0 };
  circulation.forEach((strength, i) => {
    const up = 2 * strength * (e.by[i] - e.ay[i]);
    const right = -2 * strength * (e.bz[i] - e.az[i]);
    const arm = (e.ax[i] + e.bx[i]) / 2 - about;
    sum.lift += up;
    sum.side += right;
    sum.roll += ((e.az[i] + e.bz[i]) / 2) * right - ((e.ay[i] + e.by[i]) / 2) * up;
    sum.moment -= arm * up;
    sum.yaw -= arm * right;
  });
  return symmetric
    ? { lift: 2 * sum.lift, side: 0, roll: 0, moment: 2 * sum.moment, yaw: 0, circulation }
    : { ...sum, circulation };
}
