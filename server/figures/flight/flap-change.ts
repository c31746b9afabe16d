import { otherFlapsSteps } from "../../compute/aircraft/air-basis";
import type { FlightModel, Loaded } from "../../compute/aircraft/flight-model";
import { overStall, type FlightPoints } from "../../compute/aircraft/flight-points";
import { trimAt } from "../../compute/aircraft/trim";
import { flapAccount } from "../../compute/section-air/accounts";
import { latticeAccount } from "../../compute/stability/accounts";
import { dimensions } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Surface } from "../../model/design/geometry";
import { settle } from "../../model/design/settle";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { named } from "../wing";

/** How far down all flaps and drooping flaperons go at most, rad; undefined without any. */
export function fullFlaps(surfaces: readonly Pick<Surface<number | Quantity>, "controls">[]): number | undefined {
  const throws = surfaces.flatMap(({ controls }) => controls.flatMap(({ kind, throws: { down, droop } }) => (kind === "flap" ? down : kind === "flaperon" ? droop : undefined) ?? []));
  const angles = throws.map((one) => (typeof one === "number" ? one : one.value)).filter((angle) => angle > 0);
  return angles.length > 0 ? Math.max(...angles) : undefined;
}

/** What flaps fully down do to the trim against flaps up, at one speed of level flight. */
export function* putFlapChange(set: FigureSet, memory: Memory, model: FlightModel, loaded: Loaded, { stall }: FlightPoints): Generator<void, void> {
  const shape = set.facts.shape?.nominal;
  const full = fullFlaps(set.loading.design.surfaces);
  if (!shape || full === undefined || model.basis.controls.length === 0) return;
  const controls = settle(set.loading.design.surfaces).map((surface) => surface.controls);
  const surfaces = shape.surfaces.map((surface, i) => ({ ...surface, controls: controls[i] }));
  const { bodies } = shape;
  const speed = overStall * stall.speed;
  const liftCoefficient = stall.limit.liftCoefficient / overStall ** 2;
  const angles: number[] = [];
  for (const flaps of [0, full]) {
    const basis = yield* memory.recallSteps("air basis", { surfaces, bodies, flaps }, () => otherFlapsSteps(model.basis, model.pitch, { surfaces, bodies, flaps }));
    yield;
    const trim = trimAt(basis, { liftCoefficient, cgX: loaded.x, cgZ: loaded.z });
    if (trim) angles.push(trim.deflections[0].angle);
  }
  const [up, down] = angles;
  if (down === undefined) return;
  set.put("trim.flap_change", quantity(down - up, dimensions.angle), {
    formula: `deflection of ${model.basis.controls[0].path} that leaves no moment at ${overStall} × flight.stall_speed with all flaps fully down − the same with flaps up`,
    inputs: [
      ...named(set, "flight.stall_speed", "cg.x", "cg.z"), { name: "speed", value: quantity(speed, dimensions.speed) },
      { name: "flaps down", value: quantity(full, dimensions.angle) },
    ],
    source: "vortex lattice with the flaps deflected; hinged parts: H. Glauert, ARC R&M 1095, 1927",
    notModelled: `their drag and its height, the slower air and the other downwash behind a flap that has parted from the flow, thrust, slipstream, ground effect; its band. ${flapAccount} ${latticeAccount}`,
  });
}
