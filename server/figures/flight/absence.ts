import type { FigureSet } from "../figure-set";

const onMotors = ["flight.max_speed", "flight.climb_rate", "flight.climb_angle", "flight.endurance", "flight.range", "flight.best_range_speed", "flight.ceiling"];
const pitching = new Set(["elevator", "elevon", "ruddervator"]);

/** Why a figure of flight, trim or motion isn't there, where its weight and wing are; undefined for other figures. `power`: why there is no power. */
export function flightAbsence(name: string, set: FigureSet, power: (set: FigureSet) => string): string | undefined {
  const { design } = set.loading;
  const { flight, side } = set.facts;
  const [group] = name.split(".");
  const rests = ["flight", "trim", "modes"].includes(group) || /^(aero\.(drag_parasite|lift_max|stall_station)|wing\.reynolds|stability\.(cg_forward|static_margin_powered))/.test(name) ||
    name === "power.thrust_margin";
  if (!rests || !set.facts.mass || !set.facts.pitch) return undefined;
  const pitches = design.surfaces.some(({ controls }) => controls.some(({ kind }) => pitching.has(kind)));
  if ((group === "trim" || name === "stability.cg_forward") && !pitches) return "no control pitches: there is no elevator, elevon or ruddervator";
  if (!flight) return "it can't be flown level: a section has no polar, or no control holds it";
  if (name === "trim.flap_change") return "there are no flaps with a throw down";
  if (group === "trim") {
    const paths = flight.points.cruiseTrim?.deflections.map(({ path }) => path) ?? [];
    return `no control that pitches has that name; there ${paths.length === 1 ? "is" : "are"} ${paths.join(", ")}`;
  }
  if (group === "modes" && !side) return "the flow from the side could not be solved";
  if (name === "modes.spiral.doubling_time") return "the spiral does not grow: modes.spiral.halving_time tells how it dies";
  if (name === "modes.spiral.halving_time") return "the spiral does not die: modes.spiral.doubling_time tells how it grows";
  if (group === "modes") return "that motion does not swing: its roots are real";
  if (/takeoff_run|landing_run/.test(name) && !flight.model.stance) return "it does not stand on main wheels and another: a hand launch has no run";
  if (onMotors.includes(name) || /takeoff_run|static_margin_powered|thrust_margin/.test(name)) {
    return flight.power ? "thrust and drag do not meet in the speeds looked at, or thrust is too small" : power(set);
  }
  return undefined;
}
