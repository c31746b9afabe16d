import { standardGravity } from "../constants";
import type { LateralCoefficients } from "../derivatives/lateral";
import type { Lateral } from "./plant";

/** Per radian, and how far it goes, rad. */
export interface Steering extends LateralCoefficients {
  readonly throw: { readonly negative: number; readonly positive: number };
}

/** The aircraft across its plane of symmetry at one speed. Coefficients on area and span, about the balance point. */
export interface LateralFrame {
  readonly mass: number;
  readonly density: number;
  readonly area: number;
  readonly span: number;
  /** Per radian of sideslip, wind from the right. */
  readonly sideslip: LateralCoefficients;
  /** What rolls, and what yaws. Sign as the caller's: the project's are trailing edge left, and roll to the left. Either may be absent. */
  readonly aileron?: Steering;
  readonly rudder?: Steering;
  /** Most bank either way, rad; 5° (14 CFR 23.149) when absent. */
  readonly mostBank?: number;
  /** Most sideslip either way, rad; 15°, where linear derivatives end, when absent (common practice, no source). */
  readonly mostSideslip?: number;
}

export type Limit = "rudder" | "aileron" | "bank" | "sideslip";

export interface LateralBalance {
  /** rad; wind from the right, right wing down. */
  readonly sideslip: number;
  readonly bank: number;
  readonly aileron?: number;
  readonly rudder?: number;
  /** The greatest share of a limit, and whose: over 1 it can't be held. */
  readonly use: number;
  readonly limit: Limit;
}

/** A value that rises in proportion to the sine of the bank, as a share of its limit. */
interface Share {
  readonly name: Limit;
  readonly at: number;
  readonly slope: number;
}

/** Which way of balancing: with the least use of what ends first, with the wings level, or without sideslip (least drag) as far as the most bank goes. */
export type Way = "least use" | "wings level" | "no sideslip";

type Row = readonly [number, number, number];

const solved = (columns: readonly [Row, Row, Row], right: Row): Row | undefined => {
  const det = (a: Row, b: Row, c: Row) => a[0] * (b[1] * c[2] - b[2] * c[1]) - b[0] * (a[1] * c[2] - a[2] * c[1]) + c[0] * (a[1] * b[2] - a[2] * b[1]);
  const [a, b, c] = columns;
  const whole = det(a, b, c);
  const size = [a, b, c].reduce((product, column) => product * Math.hypot(...column), 1);
  if (!(Math.abs(whole) > 1e-12 * size)) return undefined;
  return [det(right, b, c) / whole, det(a, right, c) / whole, det(a, b, right) / whole];
};

const row = ({ side, roll, yaw }: LateralCoefficients): Row => [side, roll, yaw];

/**
 * Steady straight flight against a side force and moments: side force with the weight's part in the bank, roll and yaw are zero together,
 * linear in sideslip, sine of the bank, aileron and rudder. With both controls one of the four is free, and `way` says how it is chosen.
 * Where aileron or rudder is absent the balance is what it is. Undefined where it has none: no control, or none that acts.
 */
export function lateralBalance(frame: LateralFrame, load: Lateral, speed: number, way: Way = "least use"): LateralBalance | undefined {
  const { density, area, span, mass, aileron, rudder } = frame;
  const force = (density * speed ** 2 * area) / 2;
  const weight: Row = [(mass * standardGravity) / force, 0, 0];
  const against: Row = [-load.side / force, -load.roll / (force * span), -load.yaw / (force * span)];
  const slip = row(frame.sideslip);
  if (aileron && rudder) {
    const fixed = solved([slip, row(aileron), row(rudder)], against);
    const banked = solved([slip, row(aileron), row(rudder)], [-weight[0], 0, 0]);
    if (!fixed || !banked) return undefined;
    const sine = bankFor(frame, fixed, banked, way);
    const at = (i: 0 | 1 | 2) => fixed[i] + banked[i] * sine;
    return balanceOf(frame, at(0), sine, at(1), at(2));
  }
  const only = rudder ?? aileron;
  const one = only && solved([slip, weight, row(only)], against);
  if (!one || !(Math.abs(one[1]) <= 1)) return undefined;
  return balanceOf(frame, one[0], one[1], aileron && one[2], rudder && one[2]);
}

const limits = ({ mostBank = (5 * Math.PI) / 180, mostSideslip = (15 * Math.PI) / 180 }: LateralFrame) => ({ bank: Math.sin(mostBank), sideslip: mostSideslip });

/** Sine of the bank chosen, within the most bank. */
function bankFor(frame: LateralFrame, fixed: Row, banked: Row, way: Way): number {
  const { bank, sideslip } = limits(frame);
  const held = (sine: number) => Math.min(bank, Math.max(-bank, sine));
  if (way === "wings level") return 0;
  if (way === "no sideslip") return banked[0] === 0 ? 0 : held(-fixed[0] / banked[0]);
  const both = (name: Limit, i: 0 | 1 | 2, negative: number, positive: number): Share[] =>
    [positive, -negative].map((most) => ({ name, at: fixed[i] / most, slope: banked[i] / most }));
  const { aileron, rudder } = frame;
  const shares = [
    ...both("sideslip", 0, sideslip, sideslip),
    ...(aileron ? both("aileron", 1, aileron.throw.negative, aileron.throw.positive) : []),
    ...(rudder ? both("rudder", 2, rudder.throw.negative, rudder.throw.positive) : []),
  ].filter(({ at, slope }) => Number.isFinite(at) && Number.isFinite(slope));
  const use = (sine: number) => Math.max(...shares.map(({ at, slope }) => at + slope * sine));
  // The greatest of straight lines is least at an end or where two of them cross.
  const crossings = shares.flatMap((a, i) => shares.slice(i + 1).map((b) => (b.at - a.at) / (a.slope - b.slope)));
  const places = [0, -bank, bank, ...crossings.filter((sine) => Math.abs(sine) <= bank)];
  return places.reduce((best, sine) => (use(sine) < use(best) ? sine : best));
}

function balanceOf(frame: LateralFrame, sideslip: number, sine: number, aileron?: number, rudder?: number): LateralBalance {
  const most = limits(frame);
  const of = (name: Limit, value: number, negative: number, positive: number) => ({ name, use: value === 0 ? 0 : value / (value > 0 ? positive : -negative) });
  const uses = [
    of("sideslip", sideslip, most.sideslip, most.sideslip),
    // A bank chosen is within its limit; one that the balance dictates may not be.
    ...(frame.aileron && frame.rudder ? [] : [of("bank", sine, most.bank, most.bank)]),
    ...(frame.aileron && aileron !== undefined ? [of("aileron", aileron, frame.aileron.throw.negative, frame.aileron.throw.positive)] : []),
    ...(frame.rudder && rudder !== undefined ? [of("rudder", rudder, frame.rudder.throw.negative, frame.rudder.throw.positive)] : []),
  ];
  const worst = uses.reduce((a, b) => (b.use > a.use ? b : a));
  return {
    sideslip, bank: Math.asin(sine), use: worst.use, limit: worst.name,
    ...(aileron !== undefined && { aileron }), ...(rudder !== undefined && { rudder }),
  };
}
