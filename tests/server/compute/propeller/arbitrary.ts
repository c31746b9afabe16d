import fc from "fast-check";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import type { Propeller } from "../../../../server/model/design/power";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Propellers of a type, 5 to 19 in. Folding ones have two blades, as all measured ones. */
export const anyPropeller: fc.Arbitrary<Propeller> = fc.record({
  diameter: number(0.127, 0.483),
  ratio: number(0.25, 1.3),
  blades: fc.integer({ min: 2, max: 4 }),
  family: fc.constantFrom("thin" as const, "wide" as const, "thick" as const),
  folding: fc.boolean(),
  clockwise: fc.boolean(),
}).map(({ ratio, blades, folding, ...rest }) => ({ ...rest, folding, blades: folding ? 2 : blades, pitch: ratio * rest.diameter }));

/** Blades of any stations, sense or none. */
export const anyStations: fc.Arbitrary<Propeller> = fc.record({
  propeller: anyPropeller,
  stations: fc.array(fc.record({ radius: number(0.05, 1), chord: number(0.01, 0.5), angle: number(-0.6, 1.5) }), { minLength: 2, maxLength: 8 }),
}).map(({ propeller, stations }) => ({ ...propeller, stations }));

export const anyTipSpeed = number(10, 160);
export const anyAdvance = number(0, 3);

export const anyAir = fc.record({ altitude: number(0, 3000), temperature: number(258, 318) }).map((place) => atmosphere(place)!);
