import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import { climbAt, type Path } from "../../compute/flight/path";
import { liftLimit, type Aeroplane } from "../../compute/flight/aeroplane";
import { topSpeed } from "../../compute/flight/level";
import type { FlownLeg, LegEnd } from "../../compute/flight/sortie";
import type { FigureSet } from "../../figures/figure-set";
import type { Instance } from "../../model/resolve/instance";
import type { Subject } from "../check";
import { literalIn, rewriteLiteral, twoDigits } from "../solve/sortie";

/** Why a leg ends before it is flown, and what to do. */
export interface Unflown {
  /** Completes "leg out …". */
  readonly message: string;
  /** The property it is the fault of. */
  readonly property: string;
  /** Not known to fail: what it rests on is not known. */
  readonly unsure?: true;
  readonly fix?: Fix;
}

/** Of a leg that its packs' charge does not end. */
export function unflown(subject: Subject, set: FigureSet, block: Instance, { leg, power, time }: FlownLeg, end: Exclude<LegEnd, "charge">, aeroplane: Aeroplane): Unflown {
  const { speed, bank = 0, climb = 0 } = leg;
  const say = (value: number, dimension: DimensionName) => subject.say(quantity(value, dimensions[dimension]));
  const rewritten = (name: string, value: number, towards: "up" | "down"): Fix | undefined => {
    const literal = value > 0 ? literalIn(subject, set, block, name) : undefined;
    const text = literal && twoDigits(value, literal, towards);
    return literal && text ? rewriteLiteral(subject, literal, `Write ${name} = ${text}`, text) : undefined;
  };
  if (Number.isNaN(speed)) return { property: "speed", message: "can't be flown: without motors that hold level flight the speed it asks for is none" };
  const at = `at ${say(speed, "speed")}${bank > 0 ? `, banked ${say(bank, "angle")},` : ""}`;
  switch (end) {
    case "stall": {
      const least = aeroplane.stallSpeed / Math.sqrt(Math.cos(bank));
      return {
        property: "speed", message: `can't be flown: ${at} it stalls; it takes ${say(least, "speed")}, and 1.3 × that to be safe`, fix: rewritten("speed", 1.3 * least, "up"),
      };
    }
    case "thrust": {
      if (!aeroplane.thrust) return { property: climb === 0 ? "speed" : "climb", message: "can't be flown: there is no motor; it takes glide = yes" };
      const best = climbing(aeroplane, speed, bank);
      if (climb !== 0 && best && best.rate > 0) {
        return { property: "climb", message: `can't be flown: ${at} full throttle climbs ${say(best.rate, "speed")}`, fix: rewritten("climb", 0.9 * best.rate, "down") };
      }
      const top = topSpeed(bankedBy(aeroplane, bank));
      return {
        property: "speed", message: `can't be flown: ${at} it drags more than full throttle pulls${top ? `; it flies level at ${say(top, "speed")} at most${bank > 0 ? " in that bank" : ""}` : ""}`,
        fix: top && top < speed && climb === 0 ? rewritten("speed", 0.9 * top, "down") : undefined,
      };
    }
    case "power":
      return { property: "speed", message: `can't be flown to its end: after ${say(time, "time")} of it the pack sags too far to give ${say(power, "power")}; fly it slower, climb less, or take a stronger pack` };
    case "no such way":
      return { property: "height", message: "neither climbs nor sinks, so it never reaches another height" };
    case "drag unknown":
      return { property: "speed", unsure: true, message: `is not judged: the drag ${at} is not known` };
    case "power unknown":
      return { property: "climb", unsure: true, message: `is not judged: ${at} it takes less than the least throttle that is worked out gives; glide = yes is near to it` };
  }
}

const bankedBy = (aeroplane: Aeroplane, bank: number): Aeroplane => {
  const turning = 1 / Math.cos(bank);
  const searched = aeroplane.searched && ([aeroplane.stallSpeed * Math.sqrt(turning), aeroplane.searched[1]] as const);
  return { ...aeroplane, ...(searched && { searched }), drag: (speed, loadFactor = 1) => aeroplane.drag(speed, loadFactor * turning) };
};

function climbing(aeroplane: Aeroplane, speed: number, bank: number): Path | undefined {
  return liftLimit(aeroplane, speed) >= 1 / Math.cos(bank) ? climbAt(bankedBy(aeroplane, bank), speed) : undefined;
}
