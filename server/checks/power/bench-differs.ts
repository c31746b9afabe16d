import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { halfWidth, plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { BenchQuantity } from "../../compute/powertrain/bench";
import type { Calibration } from "../../compute/powertrain/calibrate";
import { benchFigures, inputDimensions, type BenchFact } from "../../figures/bench";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always } from "../class-words";
import { rewriteInput } from "../solve/input";

const scatter = "twice the mean error of computed propellers against tunnel tests (5 % in thrust, 7 % in power, so 2.3 % in rpm); stands themselves scatter by 1 to 3 %: data of Cao and Strawson";

/** A run on the stand that the computed powerplant does not do, or does only with another input. */
export const benchDiffers: Check = {
  code: "bench_differs",
  wave: "slow",
  text: "A powerplant computes to something else than was measured on the stand; or an input is moved so that it does not, as a run asks.",
  thresholds: [
    { name: "rpm", dimension: "ratio", text: "How far the computed rpm may be off the measured.", usual: always(0.05), source: scatter },
    { name: "amps", dimension: "ratio", text: "How far the computed current may be off.", usual: always(0.15), source: scatter },
    { name: "thrust", dimension: "ratio", text: "How far the computed thrust may be off.", usual: always(0.1), source: scatter },
  ],
  run(subject) {
    // Loadings and mirrored copies share their runs: each is told of once.
    const found = new Map<string, Verdict>();
    for (const set of subject.sets) for (const fact of set.facts.bench ?? []) {
      const name = subject.places.name(set, fact.plant);
      const verdict = differing(subject, set, fact, name) ?? calibrated(subject, set, fact, name);
      if (verdict && !found.has(name)) found.set(name, verdict);
    }
    return [...found.values()];
  },
};

interface Off {
  readonly bench: string;
  readonly quantity: BenchQuantity;
  readonly measured: number;
  readonly figure: string;
  /** Computed over measured, with its band. */
  readonly ratio: Quantity;
  readonly limit: number;
}

const units: Readonly<Record<BenchQuantity, DimensionName>> = { rotation: "rotation", amps: "current", thrust: "force" };

/** What is off by more than its limit and its band, the worst by its limit first. */
function offs(subject: Subject, set: FigureSet, { runs }: BenchFact): Off[] {
  const all = runs.flatMap(({ bench, differences }) => differences.flatMap(({ quantity, measured }): Off[] => {
    const figure = `power.${bench.path}.bench_${benchFigures[quantity]}`;
    const ratio = set.value(figure);
    const limit = subject.limit(benchDiffers, benchFigures[quantity]);
    return ratio && limit ? [{ bench: bench.path, quantity, measured, figure, ratio, limit: limit.value }] : [];
  }));
  const past = ({ ratio, limit }: Off) => Math.abs(ratio.value - 1) / limit;
  return all.filter((one) => past(one) > 1 && Math.abs(one.ratio.value - 1) > halfWidth(one.ratio)).sort((a, b) => past(b) - past(a));
}

function differing(subject: Subject, set: FigureSet, fact: BenchFact, name: string): Verdict | undefined {
  const { say, places } = subject;
  const [worst, ...others] = offs(subject, set, fact);
  if (!worst) return undefined;
  const amount = (value: number) => say(quantity(value, dimensions[units[worst.quantity]]));
  const by = ({ ratio: { value } }: Off) => `${say(plain(Math.abs(value - 1)), "share")} ${value > 1 ? "over" : "under"}`;
  const words = { rotation: "rpm", amps: "current", thrust: "thrust" };
  const others_ = others.map((one) => `${words[one.quantity]} ${by(one)}${one.bench === worst.bench ? "" : ` in ${places.name(set, one.bench)}`}`);
  const also = others_.length > 0 ? ` (also ${others_.slice(0, 3).join(", ")})` : "";
  const after = fact.moved ? `, even with ${told(subject, fact.moved)}` : "";
  const explaining = fact.moved ? [] : likely(subject, fact);
  const fixes = explaining.flatMap((move) => rewriteInput(subject, set, fact.plant, move.input, move.to) ?? []);
  return {
    severity: "warning", place: places.part(set, worst.bench, benchFigures[worst.quantity]), figure: worst.figure, loading: set.loading.name,
    message: `${name} computes to ${amount(worst.measured * worst.ratio.value)} where ${places.name(set, worst.bench)} measured ${amount(worst.measured)}, ` +
      `${by(worst)}${also}${after}: ${explanation(subject, explaining)}`,
    ...(fixes.length > 0 ? { fixes } : {}),
  };
}

/** The one or two moves with which all is within the limits; a second only if it is not much less likely (by e^3, as a normal spread goes). */
function likely(subject: Subject, { calibrations }: BenchFact): Calibration[] {
  const within = (calibrations?.moves ?? []).filter(({ left }) =>
    left.every(({ quantity, off }) => Math.abs(off) <= (subject.limit(benchDiffers, benchFigures[quantity])?.value ?? Infinity)));
  return within.filter(({ unlikely }, i) => i < 2 && unlikely <= within[0].unlikely + 6);
}

function explanation(subject: Subject, moves: readonly Calibration[]): string {
  if (moves.length === 0) return "no single input explains it; look at the throttle's end points, the blade's type, the stand and the volts under load";
  const all = moves.map((move) => told(subject, move)).join(", or ");
  return `${all} would explain it${moves.length > 1 ? "; rpm, amps and thrust at two throttles tell which" : ""}`;
}

/** Powerplants that are computed otherwise than they are written, because a run asks for it. */
function calibrated(subject: Subject, set: FigureSet, fact: BenchFact, name: string): Verdict | undefined {
  const { moved, calibrations, calibratedBy } = fact;
  if (!moved || !calibrations) return undefined;
  const other = likely(subject, fact).find((move) => move !== moved);
  const ambiguous = other ? `; ${told(subject, other)} would do as well` : "";
  const fix = rewriteInput(subject, set, fact.plant, moved.input, moved.to);
  return {
    severity: "hint", place: subject.places.part(set, calibratedBy[0], "calibrate"), loading: set.loading.name,
    message: `${name} is computed with ${told(subject, moved)}, as ${calibratedBy.map((path) => subject.places.name(set, path)).join(" and ")} ` +
      `${calibratedBy.length > 1 ? "show" : "shows"}${ambiguous}`,
    fixes: fix && [fix],
  };
}

const inputWords = {
  "motor.kv": "a kv", "motor.resistance": "a winding resistance", "motor.no_load_current": "a no-load current", "propeller.pitch": "a pitch",
} as const;

function told({ say }: Subject, { input, from, to }: Calibration): string {
  const amount = (value: number) => say(quantity(value, dimensions[inputDimensions[input]]));
  const change = to / from - 1;
  return `${inputWords[input]} of ${amount(to)} instead of ${amount(from)} (${change > 0 ? "+" : "−"}${say(plain(Math.abs(change)), "share")})`;
}
