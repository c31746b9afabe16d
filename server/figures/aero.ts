import { dimensions } from "../../grammar/units/dimension";
import { divide, multiply, plain, quantity, subtract, type Quantity } from "../../grammar/units/quantity";
import { bodyAccount, latticeAccount, neutralPointAccount } from "../compute/stability/accounts";
import { neutralPointSteps, type PitchStability } from "../compute/stability/neutral-point";
import { banded, type Change, type Solved } from "./changes";
import { leastMargin } from "./class-margins";
import type { Account, Input } from "./figure";
import type { FigureSet } from "./figure-set";
import type { Memory } from "./memory";
import type { Shape } from "./shape";
import { named } from "./wing";

const lattice = "vortex lattice: J. J. Bertin and M. L. Smith, Aerodynamics for Engineers; bodies: M. M. Munk, NACA Report 184, and H. Multhopp, NACA TM 1036";

const shareOf = "R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 2";

function* solve(shape: Shape, memory: Memory): Generator<void, PitchStability | undefined> {
  return yield* memory.recallSteps("neutral point", shape, () => neutralPointSteps(shape));
}

/** Lift and pitch of the whole aircraft per radian, and where its balance point may lie. In steps of a few milliseconds. */
export function* putAero(set: FigureSet, memory: Memory): Generator<void, Solved<PitchStability> | undefined> {
  const shape = set.facts.shape;
  if (!shape) return undefined;
  const middle = yield* solve(shape.nominal, memory);
  if (!middle) return undefined;
  set.facts.pitch = middle;
  const changes: Change<PitchStability>[] = [];
  for (const variable of shape.variables) {
    const up = yield* solve(shape.at(variable, 1), memory);
    const down = yield* solve(shape.at(variable, -1), memory);
    if (up && down) changes.push({ variable, up, down });
  }
  const solved: Solved<PitchStability> = { middle, changes };
  const inputs = inputsOf(set, middle);
  const account = (formula: string): Account => ({
    formula: `${formula}. ${latticeAccount} ${bodyAccount}`, inputs, source: lattice, notModelled: neutralPointAccount,
  });
  set.put("aero.lift_slope", banded(solved, "per_angle", (p) => p.liftSlope), account("lift of all surfaces per radian / (dynamic pressure × wing area)"));
  set.put("aero.moment_slope", banded(solved, "per_angle", (p) => p.momentSlope),
    account("pitching moment of surfaces and bodies per radian about the quarter of the mean chord / (dynamic pressure × wing area × mean chord)"));
  const neutral = banded(solved, "length", (p) => p.x);
  set.put("stability.neutral_point", neutral, account("quarter of the mean chord − moment slope / lift slope × mean chord"));
  putMargin(set, neutral);
  return solved;
}

function inputsOf(set: FigureSet, { surfacesX, bodies, downwashSlope, lattice: solution }: PitchStability): Input[] {
  const length = (value: number) => quantity(value, dimensions.length);
  return [
    ...named(set, "wing.area", "wing.mean_chord", "wing.mean_chord_x"),
    { name: "neutral point of the surfaces alone", value: length(surfacesX) },
    ...bodies.map(({ path, momentSlope }): Input => ({ name: `moment slope of ${path}`, value: quantity(momentSlope, dimensions.per_angle) })),
    ...(downwashSlope === undefined ? [] : [{ name: "downwash at the tail per incidence", value: plain(downwashSlope) }]),
    { name: "horseshoes solved", value: `${solution.unknowns}${solution.symmetric ? " on one side" : ""}` },
  ];
}

function putMargin(set: FigureSet, neutral: Quantity): void {
  const chord = set.value("wing.mean_chord");
  if (!chord) return;
  const { class: airframe } = set.loading.design;
  const least = plain(leastMargin[airframe].value);
  set.put("stability.cg_aft", subtract(neutral, multiply(least, chord)), {
    formula: "stability.neutral_point − least static margin of the class × wing.mean_chord",
    inputs: [...named(set, "stability.neutral_point", "wing.mean_chord"), { name: `least static margin, ${airframe}`, value: least }],
    source: leastMargin[airframe].source,
  });
  const x = set.value("cg.x");
  if (!x) return;
  set.put("stability.static_margin", divide(subtract(neutral, x), chord), {
    formula: "(stability.neutral_point − cg.x) / wing.mean_chord",
    inputs: named(set, "stability.neutral_point", "cg.x", "wing.mean_chord"), source: shareOf, notModelled: neutralPointAccount,
  });
}
