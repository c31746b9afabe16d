import type { MeasuredPolar, MeasuredRun, Section } from "../../model/design/geometry";
import { summarise } from "../polar/summary";
import { meanLine } from "../section/mean-line";
import { thinSection } from "../section/thin-section";
import type { Attached, Below } from "./attached";
import { dragCurve } from "./drag-curve";
import { heldSlope } from "./of-polar";

/** Lift that rises again by this below its lowest was seen to stall pushing down. */
const rise = 0.02;

export interface Measured {
  readonly above: Attached;
  /** Where the table shows it. */
  readonly below?: Below;
}

/** What a table says at each of its Reynolds numbers, by rising ones. A moment that was not measured is that of thin-section theory. */
export function measuredAt(section: Section, polar: MeasuredPolar): readonly Measured[] {
  const line = meanLine(section.shape);
  const moment = line ? thinSection(line).moment : 0;
  return polar.runs.map((run) => ({ above: aboveOf(run, moment), below: belowOf(run) }));
}

/** Angle of no lift and moment by the table, the mean over its Reynolds numbers; no moment where none was measured. */
export function measuredLine(polar: MeasuredPolar): { readonly zeroLiftAngle: number; readonly moment?: number } {
  const all = polar.runs.map((run) => aboveOf(run, NaN));
  const mean = (of: (above: Attached) => number) => all.reduce((sum, above) => sum + of(above), 0) / all.length;
  const moment = mean((above) => above.moment);
  return { zeroLiftAngle: mean((above) => above.zeroLiftAngle), ...(Number.isFinite(moment) ? { moment } : {}) };
}

function aboveOf({ reynolds, points }: MeasuredRun, otherwise: number): Attached {
  const hasMoment = points.every((point) => point.moment !== undefined);
  const full = points.map((point) => ({ ...point, moment: point.moment ?? 0 }));
  const curve = dragCurve(full);
  const { zeroLiftAngle, liftSlope, moment } = summarise(full, false) ?? plainLine(full);
  const isLast = points[points.length - 1].lift >= curve.most;
  return {
    reynolds, zeroLiftAngle, liftSlope: heldSlope(liftSlope), moment: hasMoment ? moment : otherwise, liftMax: curve.most, curve,
    origin: "measured", doubts: isLast ? ["no_stall"] : [],
  };
}

interface FullPoint {
  readonly angle: number;
  readonly lift: number;
  readonly moment: number;
}

/** For tables with too few points on the straight part of the lift curve: through the one of least lift, at 2π per radian. */
function plainLine(points: readonly FullPoint[]): { zeroLiftAngle: number; liftSlope: number; moment: number } {
  const nearest = points.reduce((best, point) => (Math.abs(point.lift) < Math.abs(best.lift) ? point : best));
  return { zeroLiftAngle: nearest.angle - nearest.lift / (2 * Math.PI), liftSlope: 2 * Math.PI, moment: nearest.moment };
}

function belowOf({ points }: MeasuredRun): Below | undefined {
  const lowest = Math.min(...points.map(({ lift }) => lift));
  if (!(lowest < 0) || points[0].lift < lowest + rise) return undefined;
  const { most, drag } = dragCurve(points.map(({ lift, drag }) => ({ lift: -lift, drag })).reverse());
  return { liftMax: most, drag, provisional: false };
}
