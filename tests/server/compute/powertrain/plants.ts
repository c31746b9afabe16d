import fc from "fast-check";
import type { Pack, Powerplant, Source } from "../../../../server/model/design/power";
import { propellerOf, rpm } from "../../../published/propeller-data";
import { anyPropeller } from "../propeller/arbitrary";

export const motor = { kv: 780 * rpm, resistance: 0.038, noLoadCurrent: 1.1, gearRatio: 1 };
export const plant = (over: Partial<Powerplant> = {}): Powerplant => ({
  path: "nose", hub: [0, 0, 0], thrustAxis: [-1, 0, 0], pusher: false, source: "pack", motor, propeller: propellerOf(12, 6, "thin"), ...over,
});
export const pack = (over: Partial<Pack> = {}): Pack =>
  ({ path: "pack", cells: 4, parallel: 1, chemistry: "lipo", capacity: 4 * 3600, usable: 0.8, cRating: 30, ...over });
export const source = (...packs: Pack[]): Source => ({ path: "pack", wired: "single", packs: packs.length > 0 ? packs : [pack()] });

export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const anyPlant = fc.record({
  propeller: anyPropeller,
  motor: fc.record({ volts: number(0.5, 2), resistance: number(0.01, 0.3), noLoadCurrent: number(0, 3), gearRatio: number(1, 6) }),
  controller: fc.option(fc.record({ resistance: fc.option(number(0, 0.02), { nil: undefined }), maxCurrent: number(10, 150) }), { nil: undefined }),
}).map(({ propeller, motor: { volts, ...rest }, controller }) => plant({
  propeller, controller: controller && { path: "esc", ...controller },
  // A kv that turns it at sensible tip speeds on 12 V or so.
  motor: { ...rest, kv: (rest.gearRatio * 200 * volts) / propeller.diameter / 12 },
}));
