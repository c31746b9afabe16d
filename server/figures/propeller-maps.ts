import { mapShape } from "../compute/powertrain/run-at";
import { propellerMap, type PropellerMap } from "../compute/propeller/propeller-map";
import type { Propeller } from "../model/design/power";
import type { Memory } from "./memory";

/** Maps of propellers, each worked out once for all that rests on it. */
export const mapsIn = (memory: Memory) => (propeller: Propeller): PropellerMap =>
  memory.recall("propeller map", mapShape(propeller), () => propellerMap(propeller));
