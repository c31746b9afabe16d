import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Performance } from "../../compute/aircraft/performance";
import type { Air } from "../../compute/atmosphere/atmosphere";
import { parasiteNotModelled } from "../../compute/drag/accounts";
import { deadPropellers, type DeadPropeller } from "../../compute/drag/dead-propellers";
import { glideRatio, type BestPath } from "../../compute/flight/path";
import type { Powerplant } from "../../model/design/power";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { placeless, rungAbove, rungBelow } from "../power-tables";
import { mapsIn } from "../propeller-maps";
import { named } from "../wing";
import { sectionsAccount } from "./points";

/** All propellers with their motors off; none without powerplants, or where one has no motor or propeller that can be computed. */
export function deadIn(memory: Memory, powerplants: readonly Powerplant[], air: Air, [low, high]: readonly [number, number]): readonly DeadPropeller[] {
  if (!powerplants.every(({ motor, propeller }) => motor && propeller)) return [];
  const given = { powerplants: placeless(powerplants), air, speeds: [rungBelow(low), rungAbove(high)] as const };
  return memory.recall("propellers with motors off", given, () => deadPropellers({ ...given, mapOf: mapsIn(memory) }));
}

/** Their drag together, N. */
export const idleDragOf = (dead: readonly DeadPropeller[], { density }: Air) => (speed: number): number =>
  (dead.reduce((sum, { area }) => sum + area(speed), 0) * density * speed ** 2) / 2;

export const powerOffNumbers = ({ glide, sink }: Performance) => ({ offRatio: glide && glideRatio(glide), offSink: sink && -sink.rate });

type Of = (name: keyof ReturnType<typeof powerOffNumbers>, dimension: DimensionName) => Quantity | undefined;

export function putPowerOff(set: FigureSet, { glide, sink }: Performance, dead: readonly DeadPropeller[], of: Of): void {
  const account = (formula: string, path: BestPath): Account => ({
    formula,
    inputs: [
      ...named(set, "mass.total"), { name: "at", value: quantity(path.speed, dimensions.speed) },
      ...dead.flatMap(({ path: name, area, how }): Input[] => [
        { name: `${name}, drag area`, value: quantity(area(path.speed), dimensions.area) }, { name, value: how(path.speed) },
      ]),
    ],
    source: "J. D. Anderson, Introduction to Flight, ch. 6; propellers: blade elements, S. F. Hoerner, Fluid-Dynamic Drag, 1965, D. P. Raymer, Aircraft Design, ch. 13",
    notModelled: `a controller that brakes or lets the motor creep, the wake of propellers on what stands behind, blades that fold late; bands are those of the weight alone. Of the drag: ${parasiteNotModelled} ${sectionsAccount}`,
  });
  if (glide) set.put("flight.power_off.glide_ratio", of("offRatio", "ratio"), account("lift / (drag + drag of propellers with their motors off), greatest over speed", glide));
  if (sink) set.put("flight.power_off.sink_rate", of("offSink", "speed"), account("speed × sine of the path at which drag + drag of propellers with their motors off is weight × sine, least over speed", sink));
}
