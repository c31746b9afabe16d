import { quantity, type Quantity } from "../../grammar/units/quantity";
import { dimensions } from "../../grammar/units/dimension";
import { pitchRate } from "../compute/derivatives/pitch-rate";
import { sideDerivatives, sideSteps, type Side } from "../compute/derivatives/side";
import { inducedDrag, spanEfficiency } from "../compute/lattice/induced-drag";
import { bodyYawAccount, lateralAccount, latticeAccount } from "../compute/stability/accounts";
import type { PitchStability } from "../compute/stability/neutral-point";
import { across, banded, type Change, type Solved } from "./changes";
import type { Account, Input } from "./figure";
import type { FigureSet } from "./figure-set";
import type { Memory } from "./memory";
import type { Shape } from "./shape";
import { named } from "./wing";

const source = "definitions: R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 3; vortex lattice: J. J. Bertin and M. L. Smith, " +
  "Aerodynamics for Engineers";

/** What depends on the lift is given at this much: unhurried flight. */
const lift = 0.5;
const liftInput: Input = { name: "at a lift coefficient of", value: `${lift}, common practice, no source` };

/** Strips and rows against those of the neutral point, of the shapes that only serve a band: a tenth more or less of it matters to nobody. */
const coarse = 0.5;

/** Downwash and span efficiency, and how the aircraft answers sideslip and turning. */
export function* putDamping(set: FigureSet, memory: Memory, pitch: Solved<PitchStability>): Generator<void, void> {
  putLift(set, pitch);
  const [shape, x, z] = [set.facts.shape, set.value("cg.x"), set.value("cg.z")];
  if (!shape || !x || !z) return;
  yield;
  const turning = ({ lattice, reference }: PitchStability, cgX: number) => ({ moment: pitchRate(lattice, reference, cgX).moment });
  const pitching = yield* across(pitch, { x: { quantity: x, step: 0.001 } }, (of, at) => turning(of, at.x));
  set.put("stability.pitch_damping", pitching?.("moment", "per_angle"), {
    formula: "pitching moment about the balance point per qc̄/2V in the flow of a steady turn nose up / (dynamic pressure × wing area × mean chord)",
    inputs: named(set, "cg.x", "wing.area", "wing.mean_chord"), source,
    notModelled: `${latticeAccount} The damping of bodies and propellers, and the lag of the downwash at the tail, which adds to it.`,
  });
  const solve = (at: Shape, density: number) => memory.recallSteps("sideslip", [at, density], () => sideSteps(at, density));
  const middle = yield* solve(shape.nominal, 1);
  if (!middle) return;
  set.facts.side = middle;
  const changes: Change<Side>[] = [];
  for (const variable of shape.variables) {
    const up = yield* solve(shape.at(variable, 1), coarse);
    const down = yield* solve(shape.at(variable, -1), coarse);
    if (up && down) changes.push({ variable, up, down });
  }
  const of = yield* across({ middle, changes }, balancePoint(x, z), (side, at) => answers(side, at.x, at.z));
  if (of) putSide(set, middle, (name) => of(name, "per_angle"));
}

/** The balance point as what numbers rest on: a millimetre's move tells by how much they change. */
const balancePoint = (x: Quantity, z: Quantity) => ({ x: { quantity: x, step: 0.001 }, z: { quantity: z, step: 0.001 } });

function answers(side: Side, x: number, z: number) {
  const { sideslip, rollRate, yawRate } = sideDerivatives(side, { lift, x, z });
  return { stiffness: sideslip.yaw, dihedral: sideslip.roll, rolling: rollRate.roll, yawing: yawRate.yaw };
}

function putLift(set: FigureSet, pitch: Solved<PitchStability>): void {
  set.put("aero.downwash_slope", banded(pitch, "ratio", ({ downwashSlope }) => downwashSlope), {
    formula: "1 − lift of the tailplanes in the company of the other surfaces / their lift alone, per incidence", inputs: [], source,
    notModelled: latticeAccount,
  });
  set.put("aero.span_efficiency", banded(pitch, "ratio", efficiency), {
    formula: "lift² / (π × dynamic pressure² × span² × induced drag), induced drag from the flow across the wake far downstream",
    inputs: [...named(set, "wing.span", "wing.area"), liftInput], source: "L. Prandtl, NACA Technical Note 182, and M. M. Munk; span of the wings",
    notModelled: `${latticeAccount} Drag of viscosity that grows with the lift; the body's part in the lift.`,
  });
}

function efficiency({ lattice, reference, zeroLift, liftSlope }: PitchStability): number | undefined {
  const drag = inducedDrag(lattice.strips, (lift - zeroLift) / liftSlope);
  return spanEfficiency(lift * reference.area, drag, reference.span);
}

function putSide(set: FigureSet, { bodies }: Side, of: (name: keyof ReturnType<typeof answers>) => Quantity | undefined): void {
  const account = (formula: string, inputs: readonly Input[] = [], more = ""): Account => ({
    formula: `${formula} / (dynamic pressure × wing area × span)`, source,
    inputs: [...named(set, "cg.x", "cg.z", "wing.area", "wing.span"), liftInput, ...inputs], notModelled: `${latticeAccount} ${lateralAccount}${more}`,
  });
  const shares = bodies.map(({ path, yaw }): Input => ({ name: `${path} alone`, value: quantity(yaw, dimensions.per_angle) }));
  set.put("stability.yaw_stiffness", of("stiffness"),
    account("yawing moment into the wind per radian of sideslip, of surfaces and bodies", shares, ` ${bodyYawAccount}`));
  set.put("stability.dihedral_effect", of("dihedral"), account("rolling moment per radian of sideslip, right wing down with the wind from the right"));
  set.put("stability.roll_damping", of("rolling"), account("rolling moment per pb/2V"));
  set.put("stability.yaw_damping", of("yawing"), account("yawing moment per rb/2V"));
}
