import type { SectionShape } from "../../model/design/geometry";
import type { Solved } from "./coupled/solve";
import { potentialFlow, type PotentialFlow } from "./flow/potential";
import { outlineOf } from "./outline/outline";
import { panelled } from "./outline/panels";
import { summarise, type PolarPoint, type Summary } from "./summary";
import { sweep } from "./sweep";

export type { PolarPoint } from "./summary";

/** What of a polar is to be taken with care. */
export type PolarDoubt =
  /** Below a Reynolds number of 100,000: laminar bubbles decide, two wind tunnels differ by a fifth in drag. */
  | "low_reynolds"
  /** Lift did not fall before the last point, so the highest may not be the most. */
  | "no_stall"
  /** High camber at a small Reynolds number: such sections fail suddenly, which is not foreseen. */
  | "high_camber"
  /** Some angles were only solved with waves that break earlier than in a quiet stream: drag is then too low. */
  | "eased";

/** A section's polar at one Reynolds number, from attached flow to the limit of lift. Angles in rad. */
export interface Polar extends Summary {
  readonly reynolds: number;
  /** By rising angle. */
  readonly points: readonly PolarPoint[];
  readonly doubts: readonly PolarDoubt[];
}

/** Range of Reynolds numbers that polars are worked out for. */
export const polarRange: readonly [number, number] = [40_000, 3_000_000];

/**
 * Logarithm of the amplitude at which waves break: 9 for a quiet stream, as in low-turbulence tunnels and still air (L. M.
 * Mack 1977: a turbulence of about 0.07 %).
 */
const critical = 9;

const perSide = 60;

/** Camber as angle of no lift, rad, from which `high_camber` is said, below the Reynolds number given. */
const highCamber = { zeroLift: -0.15, reynolds: 150_000 };

/** Gives polars of one section. */
export type PolarsOf = (reynolds: number) => Polar | undefined;

/** The same in steps of some milliseconds each, between which a host can turn to other things, or drop it. */
export type PolarSteps = (reynolds: number) => Generator<void, Polar | undefined>;

/**
 * Polars of a section: potential flow by panels, boundary layers by integral equations, both solved together (after M.
 * Drela and M. B. Giles, AIAA Journal 25(10), 1987). Undefined for a flat plate, for digits or points that are no section,
 * and where the equations are met at too few angles. A Reynolds number outside `polarRange` is taken at its end.
 * Not modelled: compressibility, roughness, the base of a blunt trailing edge, flow after the stall, hysteresis.
 */
export function polarsOf(shape: SectionShape): PolarsOf {
  const steps = polarSteps(shape);
  return (reynolds) => {
    const work = steps(reynolds);
    for (;;) {
      const step = work.next();
      if (step.done) return step.value;
    }
  };
}

/** What `polarsOf` gives, in steps. */
export function polarSteps(shape: SectionShape): PolarSteps {
  const outline = outlineOf(shape);
  const flow = outline && potentialFlow(panelled(outline, perSide));
  return function* (reynolds) {
    return flow && (yield* polarAt(flow, Math.min(polarRange[1], Math.max(polarRange[0], reynolds))));
  };
}

function* polarAt(flow: PotentialFlow, reynolds: number): Generator<void, Polar | undefined> {
  const swept = yield* sweep(flow, { reynolds, critical });
  const points = swept.points.map(pointOf);
  const summary = summarise(points, swept.symmetric);
  if (!summary) return undefined;
  const doubts: PolarDoubt[] = [];
  if (reynolds < 100_000) doubts.push("low_reynolds");
  if (summary.zeroLiftAngle < highCamber.zeroLift && reynolds < highCamber.reynolds) doubts.push("high_camber");
  if (!swept.stalled) doubts.push("no_stall");
  if (swept.points.some(({ eased }) => eased)) doubts.push("eased");
  return { reynolds, ...summary, points, doubts };
}

const pointOf = ({ angle, lift, drag, moment }: Solved): PolarPoint => ({ angle, lift, drag, moment });
