import type { Body, Surface } from "../../model/design/geometry";
import { lateralFlowSteps, type LateralFlow } from "../lattice/lateral-flow";
import { referenceGeometry, type ReferenceGeometry } from "../planform/reference-geometry";
import { bodyYawSlope } from "./body-yaw";
import { lateralSteps, type FlightPoint, type LateralDerivatives } from "./lateral";

/** A shape ready for flow that differs between the sides: its surfaces' lattice and its bodies. */
export interface Side {
  readonly flow: LateralFlow;
  readonly reference: ReferenceGeometry;
  readonly surfaces: (at: FlightPoint) => LateralDerivatives;
  /** Of each body, per radian of sideslip on wing area and span, nose right. */
  readonly bodies: readonly { readonly path: string; readonly yaw: number }[];
}

/** In steps of a few milliseconds; undefined without a reference wing, or where its lattice has no solution. */
export function* sideSteps(
  { surfaces, bodies }: { readonly surfaces: readonly Surface[]; readonly bodies: readonly Body[] }, density: number,
): Generator<void, Side | undefined> {
  const reference = referenceGeometry(surfaces, bodies);
  const flow = yield* lateralFlowSteps(surfaces, { bodies, density });
  if (!reference || !flow) return undefined;
  const answers = yield* lateralSteps(flow, reference);
  return { flow, reference, surfaces: answers, bodies: bodies.map((body) => ({ path: body.path, yaw: bodyYawSlope(body) / (reference.area * reference.span) })) };
}

/** Surfaces and bodies together. Bodies add to the yawing moment in sideslip alone. */
export function sideDerivatives({ surfaces, bodies }: Side, at: FlightPoint): LateralDerivatives {
  const { sideslip, rollRate, yawRate } = surfaces(at);
  return { sideslip: { ...sideslip, yaw: sideslip.yaw + bodies.reduce((sum, { yaw }) => sum + yaw, 0) }, rollRate, yawRate };
}
