import type { SectionsAir } from "../compute/section-air/section-air";
import { putAero } from "./aero";
import { putBench } from "./bench";
import { putDamping } from "./damping";
import { putFlight } from "./flight/put-flight";
import type { KnownMoments } from "../compute/mass/part-moments";
import type { FigureSet } from "./figure-set";
import { putBalanceOnWing, putMass } from "./mass";
import type { Memory } from "./memory";
import { putPower } from "./power";
import { putThrottleSeries } from "./throttle-series";
import { putWing } from "./wing";

/** Weights, balance and planform: what a keystroke can wait for. `known`: moments of the parts of other loadings. */
export function putQuickFigures(set: FigureSet, known?: KnownMoments): void {
  putMass(set, known);
  putWing(set);
  putBalanceOnWing(set);
}

/** How the slow figures of a loading are worked out. */
export type SlowFigures = (set: FigureSet, memory: Memory, sections: SectionsAir) => Generator<void, void>;

/** Aerodynamics and power standing still, in steps: what needs no section polars. */
export const putStillFigures: SlowFigures = function* (set, memory) {
  const pitch = yield* putAero(set, memory);
  if (pitch) yield* putDamping(set, memory, pitch);
  yield* putBench(set, memory);
  yield* putPower(set, memory);
  yield* putThrottleSeries(set, memory);
};

/**
 * These first, then flight, in steps. What lacks a polar stays absent, and is worked out
 * by another run when the polars that `sections` was asked for are there. So ask for all of them before giving up on one.
 */
export const putSlowFigures: SlowFigures = function* (set, memory, sections) {
  yield* putStillFigures(set, memory, sections);
  yield* putFlight(set, memory, sections);
};
