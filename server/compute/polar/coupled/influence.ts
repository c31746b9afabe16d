import type { PotentialFlow } from "../flow/potential";
import type { WakeFlow } from "../flow/wake";

/** How the mass in the boundary layers changes the speed at their edge. Stations: the outline's nodes, then the wake's ends. */
export interface Influence {
  readonly count: number;
  /** The first node below the stagnation point; the one before it is the last above. */
  readonly below: number;
  /** Speed in the direction of the layer without any layer. */
  readonly speed: Float64Array;
  /** d(speed)⁄d(mass), row by station. */
  readonly byMass: Float64Array;
}

/** Speeds by mass with the stagnation point on the panel before node `below`. */
export function influence(flow: PotentialFlow, wake: WakeFlow, speeds: Float64Array, below: number): Influence {
  const n = flow.panels.count;
  const w = wake.line.count;
  const count = n + w;
  const speed = new Float64Array(count);
  const byMass = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const sign = i < n && i >= below ? -1 : 1;
    speed[i] = i < n ? sign * speeds[i] : wake.speed[i - n];
    const row = i * count;
    for (let j = 0; j < n - 1; j++) {
      const by = (sign * (i < n ? flow.bySource[i * (n - 1) + j] : wake.bySource[(i - n) * (n - 1 + w) + j])) / flow.panels.length[j];
      byMass[row + j] += j < below ? by : -by;
      byMass[row + j + 1] += j + 1 < below ? -by : by;
    }
    for (let k = 0; k < w; k++) {
      const by = (sign * (i < n ? wake.onOutline[i * w + k] : wake.bySource[(i - n) * (n - 1 + w) + n - 1 + k])) / wake.line.length[k];
      byMass[row + n + k] += by;
      if (k > 0) byMass[row + n + k - 1] -= by;
      else {
        byMass[row] -= by;
        byMass[row + n - 1] -= by;
      }
    }
  }
  return { count, below, speed, byMass };
}
