import { throwSpeed } from "../../compute/aircraft/performance";
import type { FigureSet } from "../figure-set";

const onMotors = ["flight.max_speed", "flight.climb_rate", "flight.climb_angle", "flight.endurance", "flight.range", "flight.best_range_speed", "flight.ceiling"];
const pitching = new Set(["elevator", "elevon", "ruddervator"]);

/** Why a figure of flight, trim or motion isn't there, where its weight and wing are; undefined for other figures. `power`: why there is no power. */
export function flightAbsence(name: string, set: FigureSet, power: (set: FigureSet) => string): string | undefined {
  const { design } = set.loading;
  const { flight, side } = set.facts;
  const [group] = name.split(".");
  if (name.startsWith("flight.sortie.")) return sortieAbsence(name, set, power);
  const rests = ["flight", "trim", "modes"].includes(group) || /^(aero\.(drag_parasite|lift_max|stall_station)|wing\.reynolds|stability\.(cg_forward|static_margin_powered))/.test(name) ||
    name === "power.thrust_margin";
  if (!rests || !set.facts.mass || !set.facts.pitch) return undefined;
  if (name.startsWith("trim.climb.")) return climbTrimAbsence(name, set, power);
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
  if (name.startsWith("flight.hand_launch.")) return launchAbsence(name, set, power);
  if (name.startsWith("flight.power_off.")) {
    return design.powerplants.length === 0 ? `there is no powerplant in this loading: ${name.replace("power_off.", "")} tells it` : power(set);
  }
  if (onMotors.includes(name) || /takeoff_run|static_margin_powered|thrust_margin/.test(name)) {
    return flight.power ? "thrust and drag do not meet in the speeds looked at, or thrust is too small" : power(set);
  }
  return undefined;
}

function launchAbsence(name: string, set: FigureSet, power: (set: FigureSet) => string): string {
  const { flight } = set.facts;
  if (flight?.model.stance) return "it stands on wheels and takes off by a run: flight.takeoff_run tells it";
  if (!flight?.power) return power(set);
  return name === "flight.hand_launch.sink" ? `thrown at ${throwSpeed} m/s it still sinks after 5 s, or falls: that is far below the stall` : "thrust or drag at the speed of the throw is not known";
}

function sortieAbsence(name: string, set: FigureSet, power: (set: FigureSet) => string): string | undefined {
  const path = name.split(".").slice(2, -1).join(".");
  const { sorties } = set.loading.design;
  if (!sorties.some((plan) => plan.path === path)) {
    return sorties.length > 0 ? `no sortie of that name is flown in this loading; there ${sorties.length === 1 ? "is" : "are"} ${sorties.map((plan) => plan.path).join(", ")}`
      : "no sortie is flown in this loading, or a leg of it has a mistake";
  }
  if (!set.facts.mass || !set.facts.pitch) return undefined;
  if (!set.facts.flight) return "it can't be flown level: a section has no polar, or no control holds it";
  const flown = set.facts.sorties?.find(({ plan }) => plan.path === path)?.flown;
  if (!flown) return power(set);
  if (flown.ended) return `leg ${flown.legs[flown.legs.length - 1].leg.name} can't be flown to its end; pack_drained tells why`;
  return /charge/.test(name) ? "no pack feeds a motor" : undefined;
}

const rolling = new Set(["aileron", "elevon", "flaperon"]);
const yawing = new Set(["rudder", "ruddervator"]);

function climbTrimAbsence(name: string, set: FigureSet, power: (set: FigureSet) => string): string | undefined {
  const { flight, side, climbTrim } = set.facts;
  const { surfaces, powerplants } = set.loading.design;
  const has = (kinds: ReadonlySet<string>) => surfaces.some(({ controls }) => controls.some(({ kind }) => kinds.has(kind)));
  if (!flight) return "it can't be flown level: a section has no polar, or no control holds it";
  if (!flight.power) return power(set);
  if (!side) return "the flow from the side could not be solved";
  if (!has(rolling) && !has(yawing)) return "nothing steers: there is no rudder, ruddervator, aileron, elevon or flaperon";
  if (!has(yawing) && /rudder|right_thrust/.test(name)) return "nothing steers in yaw: there is no rudder or ruddervator";
  if (!has(rolling) && /aileron/.test(name)) return "nothing rolls it by itself: there is no aileron, elevon or flaperon";
  if (!climbTrim) return "rudder and ailerons can't hold it straight at full throttle";
  if (name === "trim.climb.right_thrust") return powerplants.length > 1 ? "there are several powerplants" : "no side thrust within 10 deg leaves the rudder straight";
  return name === "trim.climb.bank" ? "so steep a climb leaves no weight across the flight to hold the side force" : undefined;
}
