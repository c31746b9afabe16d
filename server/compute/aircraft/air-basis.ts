import type { Body, Surface } from "../../model/design/geometry";
import type { Response } from "../lattice/loads";
import type { ControlPoint, LatticeSolution } from "../lattice/solve-lattice";
import type { ReferenceGeometry } from "../planform/reference-geometry";
import type { PitchStability } from "../stability/neutral-point";
import { airStrips, type AirStrips, type StripControl } from "./air-strips";
import { bodySlope } from "./body-slope";
import { deflectedSlope, type Deflection } from "./deflection";
import { products, type ModeProducts } from "./mode-products";
import { effective, pitchControl, pitchingControls, type PitchControl } from "./pitch-controls";
import { resting } from "./rest";

/** One of the flows that superpose, over flight speed and dynamic pressure. */
export interface AirMode {
  /** Of each strip, m. */
  readonly circulation: Float64Array;
  /** m² */
  readonly lift: number;
  /** Nose up about `AirBasis.about`, bodies included, m³. */
  readonly moment: number;
}

/**
 * Places of the flows: with the x axis along the flow, reflex and flaps as they stand; per radian of angle; what the stick adds at
 * full nose up and at full nose down (nothing where no control pitches); per pitch rate over speed (1/m) about `about`.
 */
export const modeAt = { rest: 0, angle: 1, noseUp: 2, noseDown: 3, pitchRate: 4 } as const;

/** All that the air does to an aeroplane in symmetric flow, in flows that superpose. It knows no weights. */
export interface AirBasis extends AirStrips {
  /** In the order of `modeAt`. */
  readonly modes: readonly AirMode[];
  readonly products: ModeProducts;
  /** x of the line about which moments are given, m. */
  readonly about: number;
  readonly reference: Pick<ReferenceGeometry, "area" | "meanChord" | "meanChordX">;
  /** Empty where no control pitches. */
  readonly controls: readonly PitchControl[];
}

export interface AirShape {
  /** With their controls. */
  readonly surfaces: readonly Surface[];
  readonly bodies: readonly Body[];
  /** How far the loading has its flaps down, rad; 0 when absent. */
  readonly flaps?: number;
}

/** The basis of a shape whose lattice is solved. */
export function airBasis(pitch: PitchStability, shape: AirShape): AirBasis {
  const steps = airBasisSteps(pitch, shape);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The same in steps of a few milliseconds. `pitch` is that of the same surfaces and bodies, whatever their controls: a change of
 * these costs one solution of the factored lattice for each that pitches, and two or three besides.
 */
export function* airBasisSteps(pitch: PitchStability, { surfaces, bodies, flaps = 0 }: AirShape): Generator<void, AirBasis> {
  const { lattice } = pitch;
  const turned = (deflections: readonly Deflection[]) => lattice.respond(deflectedSlope(lattice, deflections));
  const controls: PitchControl[] = [];
  const answers: Response[] = [];
  for (const { surface, control } of pitchingControls(surfaces)) {
    yield;
    const answer = turned([{ surface: surface.path, control, angle: 1 }]);
    answers.push(answer);
    controls.push(pitchControl(surface, control, answer.moment));
  }
  yield;
  const stands = resting(surfaces, flaps);
  const rest = atRest(lattice, stands);
  yield;
  const nothing = together(lattice.zero, [[-1, lattice.zero]]);
  const stick = (way: "noseUp" | "noseDown") =>
    together(nothing, controls.map((one, i) => [effective(one.control, one[way]), answers[i]]));
  const rate = lattice.respond(({ point: [x], normal: [, nz] }: ControlPoint) => -nz * (x - lattice.about));
  const slopes = bodies.map((body) => bodySlope(body, surfaces, bodies));
  const modes: AirMode[] = [];
  const flow = (response: Response, turning = false) => modeOf(lattice, response, slopes, turning);
  const flows = [() => flow(rest), () => angleMode(pitch), () => flow(stick("noseUp")), () => flow(stick("noseDown")), () => flow(rate, true)];
  for (const work of flows) {
    yield;
    modes.push(work());
  }
  const made = airStrips({
    strips: lattice.strips, symmetric: lattice.symmetric, surfaces, bodies, leftOut: lattice.leftOut,
    controls: stripControls(surfaces, controls, stands),
  });
  yield;
  return { ...made, modes, products: products(made.strips, modes), about: lattice.about, reference: pitch.reference, controls };
}

/** The same shape with its flaps at another angle: all flows but the first stay. */
export function* otherFlapsSteps(basis: AirBasis, { lattice }: PitchStability, { surfaces, bodies, flaps = 0 }: AirShape): Generator<void, AirBasis> {
  const stands = resting(surfaces, flaps);
  const rest = modeOf(lattice, atRest(lattice, stands), bodies.map((body) => bodySlope(body, surfaces, bodies)), false);
  yield;
  const made = airStrips({
    strips: lattice.strips, symmetric: lattice.symmetric, surfaces, bodies, leftOut: lattice.leftOut,
    controls: stripControls(surfaces, basis.controls, stands),
  });
  const modes = [rest, ...basis.modes.slice(1)];
  yield;
  return { ...basis, ...made, modes, products: products(made.strips, modes, basis.products.flows.slice(1)) };
}

/** With the x axis along the flow and these controls standing out. */
const atRest = (lattice: LatticeSolution, stands: readonly Deflection[]): Response => (stands.length === 0 ? lattice.zero
  : together(lattice.zero, [[1, lattice.respond(deflectedSlope(lattice, stands.map((one) => ({ ...one, angle: effective(one.control, one.angle) }))))]]));

function together(base: Response, parts: readonly (readonly [number, Response])[]): Response {
  const sum = (of: (response: Response) => number) => parts.reduce((total, [factor, part]) => total + factor * of(part), of(base));
  return {
    lift: sum((r) => r.lift), side: sum((r) => r.side), roll: sum((r) => r.roll), moment: sum((r) => r.moment), yaw: sum((r) => r.yaw),
    circulation: base.circulation.map((_, i) => sum((r) => r.circulation[i])),
  };
}

/** A response of the lattice as a flow of the basis, bodies included; `turning`: in the flow of a pitch rate. */
export function modeOf(lattice: LatticeSolution, response: Response, slopes: readonly ReturnType<typeof bodySlope>[], turning: boolean): AirMode {
  const still = response.circulation.every((one) => one === 0);
  const upwash = still ? () => 0 : lattice.upwashOf(response);
  const bodies = slopes.reduce((sum, moment) => sum + moment((at) => upwash(at) + (turning ? at[0] - lattice.about : 0)), 0);
  return { circulation: lattice.stripCirculation(response), lift: response.lift, moment: response.moment + (Number.isFinite(bodies) ? bodies : 0) };
}

function angleMode({ lattice, bodies, reference: { area, meanChord } }: PitchStability): AirMode {
  return {
    circulation: Float64Array.from(lattice.strips, ({ circulation }) => circulation.slope), lift: lattice.liftSlope,
    moment: lattice.momentSlope + bodies.reduce((sum, { momentSlope }) => sum + momentSlope, 0) * area * meanChord,
  };
}

function stripControls(surfaces: readonly Surface[], pitching: readonly PitchControl[], stands: readonly Deflection[]): StripControl[] {
  return surfaces.flatMap(({ path, controls }) => controls.map((control): StripControl => {
    const stick = pitching.find((one) => one.control === control);
    const rest = stands.find((one) => one.control === control)?.angle ?? 0;
    return { surface: path, control, rest, noseUp: stick?.noseUp ?? 0, noseDown: stick?.noseDown ?? 0 };
  }));
}
