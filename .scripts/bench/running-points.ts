import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { runAt } from "../../server/compute/powertrain/run-at";
import { propellerMap, type PropellerMap } from "../../server/compute/propeller/propeller-map";
import type { BladeFamily, Powerplant, Source } from "../../server/model/design/power";

const rpm = Math.PI / 30;
const sources: readonly Source[] = [{
  path: "pack", wired: "single", packs: [{ path: "pack", cells: 4, parallel: 1, chemistry: "lipo", capacity: 4 * 3600, usable: 0.8 }],
}];

const plant = (path: string, family: BladeFamily, diameter: number): Powerplant => ({
  path, hub: [0, 0, 0], thrustAxis: [-1, 0, 0], pusher: false, source: "pack",
  motor: { kv: 780 * rpm, resistance: 0.038, noLoadCurrent: 1.1, gearRatio: 1 },
  propeller: { diameter, pitch: 0.55 * diameter, blades: 2, family, folding: false, clockwise: true },
});

const speeds = Array.from({ length: 16 }, (_, i) => 2 * i);
const throttles = [0.3, 0.6, 1];

/** A line for each set of powerplants on one pack: maps made as a grid of airspeeds and throttles asks for them, and then a point of it. */
export function runningPoints(): readonly string[] {
  const sets = { one: [plant("a", "thin", 0.3)], "two alike": [plant("a", "thin", 0.3), plant("b", "thin", 0.3)], "two unlike": [plant("a", "thin", 0.3), plant("b", "thick", 0.25)] };
  return Object.entries(sets).map(([name, powerplants]) => {
    const first = grid(powerplants, new Map());
    const maps = new Map<string, PropellerMap>();
    grid(powerplants, maps);
    const again = Math.min(...Array.from({ length: 5 }, () => grid(powerplants, maps)));
    return `${name.padEnd(10)} maps ${Math.max(0, first - again).toFixed(1).padStart(5)} ms, then ${((1000 * again) / (speeds.length * throttles.length)).toFixed(0).padStart(4)} µs a point`;
  });
}

/** ms for all points. */
function grid(powerplants: readonly Powerplant[], maps: Map<string, PropellerMap>): number {
  const air = atmosphere({ altitude: 0 });
  if (!air) return Number.NaN;
  const start = performance.now();
  for (const speed of speeds) {
    for (const throttle of throttles) {
      runAt({
        powerplants, sources, air, state: "nominal", throttle, speed,
        mapOf: (propeller) => {
          const key = `${propeller.family} ${propeller.diameter}`;
          const map = maps.get(key) ?? propellerMap(propeller);
          maps.set(key, map);
          return map;
        },
      });
    }
  }
  return performance.now() - start;
}
