import { putAero } from "./aero";
import { putDamping } from "./damping";
import type { KnownMoments } from "../compute/mass/part-moments";
import type { FigureSet } from "./figure-set";
import { putBalanceOnWing, putMass } from "./mass";
import type { Memory } from "./memory";
import { putPower } from "./power";
import { putWing } from "./wing";

/** Weights, balance and planform: what a keystroke can wait for. `known`: moments of the parts of other loadings. */
export function putQuickFigures(set: FigureSet, known?: KnownMoments): void {
  putMass(set, known);
  putWing(set);
  putBalanceOnWing(set);
}

/** Aerodynamics and power, in steps. */
export function* putSlowFigures(set: FigureSet, memory: Memory): Generator<void, void> {
  const pitch = yield* putAero(set, memory);
  if (pitch) yield* putDamping(set, memory, pitch);
  yield* putPower(set, memory);
}
