import type { Air } from "../compute/atmosphere/atmosphere";
import { flightPower, type FlightPower } from "../compute/powertrain/in-flight";
import { powerTableSteps, type PowerTable } from "../compute/powertrain/power-table";
import { thinAirSteps, type ThinAir } from "../compute/powertrain/thin-air";
import type { Powerplant, Source } from "../model/design/power";
import type { Memory } from "./memory";
import { mapsIn } from "./propeller-maps";

export interface Power {
  readonly at: FlightPower;
  readonly table: PowerTable;
  readonly thinAir: ThinAir;
}

/** Tables reach past what is asked to the next of such steps, so that a little more speed finds them known. */
const ladder = 1.25;

/** The step of the ladder at a speed or above it. */
export const rungAbove = (speed: number): number => ladder ** Math.ceil(Math.log(speed) / Math.log(ladder));
export const rungBelow = (speed: number): number => ladder ** Math.floor(Math.log(speed) / Math.log(ladder));

/** Powerplants as if all stood at one place: what they give in straight flight doesn't hang on it. */
export const placeless = (powerplants: readonly Powerplant[]): readonly Powerplant[] => powerplants.map((plant) => ({ ...plant, hub: [0, 0, 0] }));

/**
 * All powerplants in flight up to a speed at least, on half-charged packs; worked out once for every shape and weight they carry.
 * Undefined without any, or where one lacks something.
 */
export function* powerIn(
  memory: Memory, powerplants: readonly Powerplant[], sources: readonly Source[], air: Air, fastest: number,
): Generator<void, Power | undefined> {
  const given = { powerplants: placeless(powerplants), sources, air, to: rungAbove(fastest) };
  return yield* memory.recallSteps("power in flight", given, function* () {
    const of = (density: number) => flightPower({ powerplants: given.powerplants, sources, air: { ...air, density }, state: "nominal", mapOf: mapsIn(memory) });
    const at = of(air.density);
    if (!at) return undefined;
    const table = yield* powerTableSteps(at, 0, given.to);
    const thinAir = yield* thinAirSteps((density) => of(density)!.thrust, air.density, given.to);
    return { at, table, thinAir };
  });
}
