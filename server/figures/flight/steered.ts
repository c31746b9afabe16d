import { lateralAir, steeredSide, type LateralAir } from "../../compute/motor-out/lateral-air";
import { settle } from "../../model/design/settle";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";

/** What sideslip and controls do to a loading; worked out once for its shape. Nothing without flight across, or where nothing steers. */
export function steeredAir(set: FigureSet, memory: Memory): LateralAir | undefined {
  const { flight, side, shape } = set.facts;
  if (!flight || !side || !shape) return undefined;
  const surfaces = settle(set.loading.design.surfaces);
  const controls = surfaces.map((surface) => surface.controls);
  const steered = memory.recall("steered side", [shape.nominal, controls], () => steeredSide(side, surfaces));
  return steered.roll || steered.yaw ? lateralAir(steered, flight.loaded) : undefined;
}
