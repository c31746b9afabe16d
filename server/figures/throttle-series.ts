import type { DimensionName } from "../../grammar/units/dimension";
import type { Style } from "../../grammar/units/display";
import { atmosphere } from "../compute/atmosphere/atmosphere";
import type { PlantRun } from "../compute/powertrain/plant-run";
import { runAt } from "../compute/powertrain/run-at";
import { settle } from "../model/design/settle";
import type { FigureSet } from "./figure-set";
import type { Memory } from "./memory";
import { placeless } from "./power-tables";
import { mapsIn } from "./propeller-maps";
import type { Row } from "./series";

/** Places of the plot. */
const throttles = Array.from({ length: 20 }, (_, i) => (i + 1) / 20);

/** Running points over throttle at an airspeed, packs half charged: all powerplants together, and how fast each turns. */
function* rowsAt(set: FigureSet, memory: Memory, speed: number, when: string): Generator<void, Row[]> {
  const { powerplants, sources, field } = settle({ powerplants: set.design.powerplants, sources: set.design.sources, field: set.design.field });
  const air = atmosphere(field);
  if (!air) return [];
  const plants = placeless(powerplants);
  const runs = yield* memory.recallSteps("throttle", { plants, sources, field, speed }, function* () {
    const points: (readonly PlantRun[])[] = [];
    for (const [i, throttle] of throttles.entries()) {
      if (i % 5 === 0) yield;
      const { powerplants: found } = runAt({ powerplants: plants, sources, air, state: "nominal", throttle, speed, mapOf: mapsIn(memory) });
      points.push(found.filter((one): one is PlantRun => "thrust" in one));
    }
    return points;
  });
  if (runs.some((plants) => plants.length < powerplants.length)) return [];
  const line = (title: string, dimension: DimensionName, of: (plants: readonly PlantRun[]) => number | undefined, style?: Style): Row =>
    ({ title: `${title}, ${when}`, dimension, values: runs.map(of), ...(style && { style }) });
  const sum = (pick: (run: PlantRun, i: number) => number) => (plants: readonly PlantRun[]) => plants.reduce((all, run, i) => all + pick(run, i), 0);
  const electric = sum((run) => run.electricPower);
  return [
    line("Thrust", "force", sum((run, i) => -run.thrust * powerplants[i].thrustAxis[0])),
    line("Current", "current", sum((run) => run.packCurrent)),
    line("Power", "power", electric),
    // What the air turns gives no shaft power: no efficiency there.
    line("Efficiency", "ratio", (plants) => (electric(plants) > 0 ? sum((run) => Math.max(0, run.shaftPower))(plants) / electric(plants) : undefined), "share"),
    ...powerplants.map(({ path }, i) => line(powerplants.length > 1 ? `Rpm of ${path}` : "Rpm", "rotation", (plants) => plants[i].rotation)),
  ];
}

/** Thrust, current, power, efficiency and rpm over throttle: standing, and at cruise once that is known. */
export function* putThrottleSeries(set: FigureSet, memory: Memory): Generator<void, void> {
  if (set.design.powerplants.length === 0) return;
  const cruise = set.facts.flight?.points.cruise.speed;
  const standing = yield* rowsAt(set, memory, 0, "standing");
  const flying = cruise === undefined ? [] : yield* rowsAt(set, memory, cruise, "at cruise");
  set.putSeries({
    name: "power.throttle", title: "Powerplants over throttle", x: { title: "Throttle", dimension: "ratio", style: "share", values: throttles },
    lines: [...standing, ...flying],
  });
}
