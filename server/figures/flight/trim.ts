import type { DimensionName } from "../../../grammar/units/dimension";
import type { Quantity } from "../../../grammar/units/quantity";
import type { FlightPoints } from "../../compute/aircraft/flight-points";
import { flapAccount } from "../../compute/section-air/accounts";
import { latticeAccount } from "../../compute/stability/accounts";
import type { Account } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";
import { sectionsAccount } from "./points";

/** Angle and controls that hold level flight, by name; controls by their path after `cruise ` and `stall `. Empty where none pitches. */
export function trimNumbers({ cruiseTrim, stallTrim }: FlightPoints): Readonly<Record<string, number | undefined>> {
  if (!cruiseTrim || !stallTrim) return {};
  const by = (point: string, trim: typeof cruiseTrim) => trim.deflections.map(({ path, angle }) => [`${point} ${path}`, angle] as const);
  return {
    angle: cruiseTrim.angle, stallAngle: stallTrim.angle,
    // From where the stick is at cruise to full nose up.
    throwLeft: stallTrim.throwLeft.noseUp / Math.max(cruiseTrim.throwLeft.noseUp, 1e-9),
    ...Object.fromEntries([...by("cruise", cruiseTrim), ...by("stall", stallTrim)]),
  };
}

export function putTrim(set: FigureSet, { cruiseTrim, stallTrim }: FlightPoints, of: (name: string, dimension: DimensionName) => Quantity | undefined): void {
  if (!cruiseTrim || !stallTrim) return;
  const assumed = cruiseTrim.assumed ? "; a throw that is not written is taken as 20°" : "";
  const account = (formula: string, ...inputs: string[]): Account => ({
    formula: `${formula}${assumed}`, inputs: named(set, "mass.total", "cg.x", "cg.z", ...inputs),
    source: "vortex lattice with the controls deflected; hinged parts: H. Glauert, ARC R&M 1095, 1927",
    notModelled: `thrust and its moment (propeller off), slipstream. ${flapAccount} ${sectionsAccount} ${latticeAccount}`,
  });
  set.put("trim.angle", of("angle", "angle"), account("angle of the x axis to the flow at which lift is the weight and no moment is left, at cruise", "flight.cruise_speed"));
  set.put("trim.stall_angle", of("stallAngle", "angle"), account("angle of the x axis to the flow at the trimmed stall", "flight.stall_speed"));
  for (const { path } of cruiseTrim.deflections) {
    set.put(`trim.${path}`, of(`cruise ${path}`, "angle"), account("deflection from neutral that leaves no moment at cruise, trailing edge down positive", "flight.cruise_speed"));
    set.put(`trim.${path}.stall`, of(`stall ${path}`, "angle"), account("deflection from neutral that leaves no moment at the stall, trailing edge down positive", "flight.stall_speed"));
  }
  set.put("trim.throw_left", of("throwLeft", "ratio"), account("(full nose-up throw − throw held at the stall) / (full nose-up throw − throw held at cruise)", "flight.stall_speed", "flight.cruise_speed"));
}
