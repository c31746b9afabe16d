import type { Control, Surface } from "../../model/design/geometry";
import type { LateralFlow } from "../lattice/lateral-flow";
import type { LateralStrip } from "../lattice/lateral-strips";
import { bracketedRoot } from "../root";
import { addTurned, coverage } from "./deflection";
import { effective, usualThrow } from "./pitch-controls";

/** Roll to the left and yaw to the left are positive: right trailing edge down, rudder's trailing edge left. */
export type SteeringWay = "roll" | "yaw";

export interface SteeringControl {
  readonly surface: string;
  readonly control: Control;
  /** Angles at full throw, rad, sizes: of each side where they differ. */
  readonly positive: readonly number[];
  readonly negative: readonly number[];
  /** Is no throw written, so that these are `usualThrow`? */
  readonly assumed: boolean;
}

/** What rolls, or what yaws, all of it moving together; the first stands for all. */
export interface SteeringAxis {
  readonly controls: readonly SteeringControl[];
  /** Slopes of the surfaces per effective radian of the first. */
  readonly slopes: Float64Array;
  /** How far it goes each way, effective rad, sizes. */
  readonly throw: { readonly negative: number; readonly positive: number };
  /** The deflection that has an effect, both rad; a mean of both sides where they differ. */
  readonly angle: (effect: number) => number;
  /** What turned controls drag more than straight ones, over dynamic pressure, m², at a share of their throw. */
  readonly dragArea: (effect: number) => number;
}

const kinds: Readonly<Record<SteeringWay, ReadonlySet<string>>> = {
  roll: new Set(["aileron", "elevon", "flaperon"]), yaw: new Set(["rudder", "ruddervator"]),
};

/** Throws by their names; one that is not written is as large as the other. */
function throwsOf({ kind, throws }: Control): Pick<SteeringControl, "positive" | "negative" | "assumed"> {
  const pair = (a: number | undefined, b: number | undefined) => ({ pair: [a ?? b ?? usualThrow, b ?? a ?? usualThrow], assumed: a === undefined && b === undefined });
  if (kind === "rudder") {
    const { pair: [left, right], assumed } = pair(throws.left, throws.right);
    return { positive: [left], negative: [right], assumed };
  }
  const [a, b] = kind === "aileron" ? [throws.up, throws.down] : kind === "ruddervator" ? [throws.yaw_out, throws.yaw_in] : [throws.roll_up, throws.roll_down];
  const both = pair(a, b);
  return { positive: both.pair, negative: both.pair, assumed: both.assumed };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Of a control at a share of its throw, −1 to 1. */
const turnedAt = ({ positive, negative }: SteeringControl, stick: number): readonly number[] =>
  (stick < 0 ? negative : positive).map((most) => stick * most);
const effectAt = (one: SteeringControl, stick: number): number => mean(turnedAt(one, stick).map((angle) => effective(one.control, angle)));

/** Trailing edge down is positive for slopes: which way that is on a strip. */
const sense = (way: SteeringWay, { y, ny }: LateralStrip): 1 | -1 => ((way === "roll" ? y : ny) > 0 ? 1 : -1);

/** How far beyond its throw a control is followed; farther out its effect goes on straight. */
const farthest = 4;

/** Undefined where nothing steers that way. */
export function steeringAxis({ strips, rows }: LateralFlow, surfaces: readonly Surface[], way: SteeringWay): SteeringAxis | undefined {
  const found = surfaces.flatMap(({ path, controls }) => controls.filter(({ kind }) => kinds[way].has(kind))
    .map((control): SteeringControl => ({ surface: path, control, ...throwsOf(control) })))
    .filter((one) => effectAt(one, 1) > 0 && effectAt(one, -1) < 0);
  const full = (one: SteeringControl) => (effectAt(one, 1) - effectAt(one, -1)) / 2;
  const [lead, ...others] = found.sort((a, b) => full(b) - full(a));
  if (!lead) return undefined;
  const controls = [lead, ...others];
  const slopes = new Float64Array(strips.length * rows);
  for (const one of controls) addTurned(slopes, { strips, rows }, one, (strip) => (sense(way, strip) * full(one)) / full(lead));
  const stickFor = (effect: number) => {
    const end = Math.sign(effect) * farthest;
    return effect === 0 ? 0 : bracketedRoot((stick) => effectAt(lead, stick) - effect, 0, end, 1e-12) ?? (effect * end) / effectAt(lead, end);
  };
  const areas = controls.map((one) => ({ one, area: flapArea(strips, one) }));
  return {
    controls, slopes,
    throw: { negative: -effectAt(lead, -1), positive: effectAt(lead, 1) },
    angle: (effect) => mean(turnedAt(lead, stickFor(effect))),
    dragArea: (effect) => {
      const stick = stickFor(effect);
      return areas.reduce((sum, { one, area }) => sum + area * mean(turnedAt(one, stick).map((angle) => Math.sin(angle) ** 2)), 0);
    },
  };
}

/** As for a section's plain flap: 1.7 × chord share^1.38 on the area before it (B. W. McCormick, ch. 4; from memory), at most half the chord. */
function flapArea(strips: readonly LateralStrip[], { surface, control }: SteeringControl): number {
  if (control.allMoving) return 0;
  return strips.filter(({ path }) => path === surface).reduce((sum, { along, length, chord }) => {
    const { share, chord: flap } = coverage(control, along);
    return sum + share * length * chord * 1.7 * Math.min(0.5, flap) ** 1.38;
  }, 0);
}
