import type { Body } from "../../model/design/geometry";
import { bodySection } from "../planform/body-section";
import { apparentMass } from "./apparent-mass";

/** Change of the local angle of flow per change of the angle of attack at a station x, by the wing: 1 far from any. */
export type FlowSlope = (x: number) => number;

/** A stretch of x in which a surface crosses the body and straightens the flow: it adds no moment there. */
export type Covered = readonly [from: number, to: number];

/** Slices a stretch of body is summed over, closer together towards a wing. */
const slices = 12;

/**
 * Nose-up moment of a body over dynamic pressure per radian, m³: (k2 − k1) (π/2) ∫ w² (dβ/dα) dx. In free flow this is
 * Munk's 2 (k2 − k1) × volume (NACA Report 184, 1924) for a round body; beside wings it is Multhopp's strip form (NACA
 * Technical Memorandum 1036, 1942) with the flow given by `slope` and nothing where `covered`. The width w alone counts,
 * whatever the height. Zero for a body without width or length.
 */
export function bodyMomentSlope(body: Body, slope: FlowSlope = () => 1, covered: readonly Covered[] = []): number {
  const { along, across } = apparentMass(fineness(body));
  let sum = 0;
  for (const { from, to, wingAhead, wingBehind } of bareStretches(body, covered)) {
    sum += spaced(from, to, wingAhead, wingBehind).reduce((total, { x, width }) => {
      const halfWidth = bodySection(body, x)?.halfWidth ?? 0;
      return total + (2 * halfWidth) ** 2 * slope(x) * width;
    }, 0);
  }
  return (across - along) * (Math.PI / 2) * sum;
}

/** Length over the diameter of the circle as large as the largest section. */
export function fineness(body: Body): number {
  const largest = Math.max(...body.stations.map(({ width, height }) => width * height));
  const length = body.stations[body.stations.length - 1].x - body.stations[0].x;
  return largest > 0 ? length / Math.sqrt(largest) : Infinity;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly wingAhead: boolean;
  readonly wingBehind: boolean;
}

function bareStretches(body: Body, covered: readonly Covered[]): Stretch[] {
  const [start, end] = [body.nose[0] + body.stations[0].x, body.nose[0] + body.stations[body.stations.length - 1].x];
  const stretches: Stretch[] = [];
  let at = start;
  for (const [from, to] of [...covered].sort((a, b) => a[0] - b[0])) {
    if (from > at && at < end) stretches.push({ from: at, to: Math.min(from, end), wingAhead: at > start, wingBehind: from < end });
    at = Math.max(at, to);
  }
  if (at < end) stretches.push({ from: at, to: end, wingAhead: at > start, wingBehind: false });
  return stretches;
}

/** Middles and widths of slices; their distance from a wing grows with its square, as the upwash there falls off. */
function spaced(from: number, to: number, wingAhead: boolean, wingBehind: boolean): { readonly x: number; readonly width: number }[] {
  const share = (t: number) => {
    if (wingAhead && wingBehind) return t < 0.5 ? 2 * t * t : 1 - 2 * (1 - t) ** 2;
    if (wingAhead) return t * t;
    return wingBehind ? 1 - (1 - t) ** 2 : t;
  };
  const at = (t: number) => from + (to - from) * share(t);
  return Array.from({ length: slices }, (_, i) => ({ x: at((i + 0.5) / slices), width: at((i + 1) / slices) - at(i / slices) }));
}
