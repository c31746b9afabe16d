import type { Aeroplane } from "../flight/aeroplane";
import { groundAir, landingRun, overStall, rollingFriction, takeoffRun, type Run, type Stuck } from "../flight/ground-run";
import { stateOf } from "./air-state";
import type { FlightModel } from "./flight-model";
import type { FlightPoints } from "./flight-points";

/** m; absent where there is no run, or it comes to no end. */
export interface GroundRuns {
  readonly takeoff?: number;
  readonly landing?: number;
  readonly takeoffHard?: number;
  readonly landingHard?: number;
}

/** Rolling friction on the grass of a flying field with small wheels: twice that of full-size practice on turf. Common practice, no source. */
export const grassFriction = 2 * rollingFriction.turf.free;

/** On asphalt or concrete: as full-size wheels. */
export const hardFriction = rollingFriction.hard.free;

/** Only on wheels: a hand launch has no run. */
export function groundRuns({ stance, basis, air }: FlightModel, { cruise }: FlightPoints, { mass, stallSpeed, thrust }: Aeroplane): GroundRuns {
  if (!stance) return {};
  const { area } = basis.reference;
  const rolling = stateOf(basis, { angle: stance.angle });
  const wings = basis.strips.filter(({ kind }) => kind === "wing");
  const height = wings.reduce((sum, { z }) => sum + z, 0) / Math.max(1, wings.length) - stance.z;
  const span = 2 * Math.max(...wings.flatMap(({ ends }) => ends.map(([y]) => Math.abs(y))));
  const ground = groundAir({
    density: air.density, area, lift: rolling.liftCoefficient, parasite: cruise.parasite, induced: rolling.inducedDrag / area, height: height / span,
  });
  const off = (friction: number) => (thrust ? distanceOf(takeoffRun({ ...ground, mass, friction, thrust }, overStall.liftOff * stallSpeed)) : undefined);
  const down = (friction: number) => distanceOf(landingRun({ ...ground, mass, friction }, overStall.touchdown * stallSpeed));
  return { takeoff: off(grassFriction), landing: down(grassFriction), takeoffHard: off(hardFriction), landingHard: down(hardFriction) };
}

const distanceOf = (run: Run | Stuck | undefined): number | undefined => (run && "distance" in run ? run.distance : undefined);
