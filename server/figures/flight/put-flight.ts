import type { SectionsAir } from "../../compute/section-air/section-air";
import { flightPoints, speedsOf } from "../../compute/aircraft/flight-points";
import { sectionsKnown, type Loaded } from "../../compute/aircraft/flight-model";
import { settler } from "../../model/design/settle";
import { across, type Numbers } from "../changes";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { putThrottleSeries } from "../throttle-series";
import { putEnvelope } from "./envelope";
import { putFlapChange } from "./flap-change";
import { putFlightSeries } from "./flight-series";
import { flightModels } from "./model";
import { putModes } from "./modes";
import { putMotorOut } from "./motor-out";
import { putPerformance } from "./performance";
import { pointNumbers, putPoints } from "./points";
import { putSorties } from "./sortie";
import { putTorqueTrim } from "./torque-trim";
import { putTrim, trimNumbers } from "./trim";

/**
 * Stall, trim, drag, glide and motion of a loading, in steps of a few milliseconds. Nothing where its weight or a section's
 * polar is not known.
 */
export function* putFlight(set: FigureSet, memory: Memory, sections: SectionsAir): Generator<void, void> {
  const [mass, x, z] = ["mass.total", "cg.x", "cg.z"].map((name) => set.value(name));
  if (!mass || !x || !z) return;
  const models = yield* flightModels(set, memory, sections);
  if (!models) return;
  const { middle } = models;
  const loaded: Loaded = { mass: mass.value, x: x.value, z: z.value };
  if (!sectionsKnown(middle, loaded)) return;
  yield;
  const speeds = speedsOf(middle, loaded);
  if (!speeds) return;
  yield;
  const cruise = settler(set.loading.design.cruise).nominal;
  const { best, table, stall } = speeds;
  const nominal = flightPoints(middle, loaded, cruise, best, { stall });
  if (!nominal) return;
  yield;
  set.facts.flight = { model: middle, loaded, points: nominal, table };
  const values = {
    mass: { quantity: mass, step: 0.001 * mass.value }, x: { quantity: x, step: 0.001 }, z: { quantity: z, step: 0.001 },
  };
  const of = yield* across(models, values, (model, at): Numbers | undefined => {
    const there: Loaded = { mass: at.mass, x: at.x, z: at.z };
    // Speeds at which something is best grow with the root of the weight.
    const grown = Math.sqrt(at.mass / loaded.mass);
    const here = model === middle && at.mass === loaded.mass && at.x === loaded.x && at.z === loaded.z;
    const points = here ? nominal : flightPoints(model, there, cruise, { leastDrag: best.leastDrag * grown, leastSink: best.leastSink * grown }, nominal);
    return points && { ...pointNumbers(model, points), ...trimNumbers(points) };
  });
  if (!of) return;
  putPoints(set, nominal, middle, of);
  putTrim(set, nominal, of);
  yield* putFlapChange(set, memory, middle, loaded, nominal);
  yield* putModes(set, models, loaded, nominal);
  putFlightSeries(set, middle, loaded, nominal, table);
  yield;
  yield* putPerformance(set, memory, middle, loaded, nominal, table);
  yield* putEnvelope(set, memory);
  yield* putThrottleSeries(set, memory);
  yield* putSorties(set);
  yield* putMotorOut(set, memory);
  yield* putTorqueTrim(set, memory);
}
