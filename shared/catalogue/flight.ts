import type { FigureEntry } from "./entry";

export const trimEntries: readonly FigureEntry[] = [
  { name: "trim.angle", title: "Trimmed angle at cruise", dimension: "angle", text: "Angle of the x axis to the flow in level flight at cruise, nose up." },
  { name: "trim.stall_angle", title: "Trimmed angle at stall", dimension: "angle", text: "Angle of the x axis to the flow where the wing first stalls, nose up." },
  { name: "trim.flap_change", title: "Trim change with flaps", dimension: "angle", text: "How much farther the pitch control stands down at 1.3 × stall with all flaps fully down than with them up, trailing edge down positive." },
  { name: "trim.<path>.stall", title: "Trim of a control surface at stall", dimension: "angle", text: "How far it is deflected where the wing first stalls, trailing edge down positive." },
  { name: "trim.<path>", title: "Trim of a control surface at cruise", dimension: "angle", text: "How far it is deflected to hold level flight at cruise, trailing edge down positive." },
  { name: "trim.throw_left", title: "Throw left at stall", dimension: "ratio", style: "share", text: "Share of the nose-up throw, from level flight at cruise to its end, that is left where the wing first stalls." },
  { name: "trim.climb.rudder", title: "Rudder at full throttle", dimension: "angle", text: "How far the rudder is turned to fly straight at full throttle and the speed of best climb, all motors running, trailing edge left positive." },
  { name: "trim.climb.aileron", title: "Aileron at full throttle", dimension: "angle", text: "How far the ailerons are turned there against the propellers' torque, positive rolls left." },
  { name: "trim.climb.bank", title: "Bank at full throttle", dimension: "angle", text: "The bank that holds the side force there, right wing down." },
  { name: "trim.climb.right_thrust", title: "Side thrust without rudder", dimension: "angle", text: "How far to the right a single powerplant would point to need no rudder there; negative points left." },
];

export const modeEntries: readonly FigureEntry[] = [
  { name: "modes.short_period.damping", title: "Damping of the short period", dimension: "ratio", text: "Share of critical damping of the quick motion in pitch at cruise, controls fixed." },
  { name: "modes.short_period.frequency", title: "Frequency of the short period", dimension: "rotation", text: "Undamped natural frequency of the quick motion in pitch at cruise." },
  { name: "modes.phugoid.damping", title: "Damping of the phugoid", dimension: "ratio", text: "Share of critical damping of the slow rise and fall of speed and height at cruise. Negative grows." },
  { name: "modes.phugoid.frequency", title: "Frequency of the phugoid", dimension: "rotation", text: "Undamped natural frequency of the slow rise and fall." },
  { name: "modes.dutch_roll.damping", title: "Damping of the Dutch roll", dimension: "ratio", text: "Share of critical damping of the swing in yaw and roll at cruise. Negative grows." },
  { name: "modes.dutch_roll.frequency", title: "Frequency of the Dutch roll", dimension: "rotation", text: "Undamped natural frequency of the swing in yaw and roll." },
  { name: "modes.roll.time", title: "Time of the roll mode", dimension: "time", text: "Seconds in which a roll, let go, falls to 1/e." },
  { name: "modes.spiral.doubling_time", title: "Doubling time of the spiral", dimension: "time", text: "Seconds in which a bank left alone doubles; only where it grows." },
  { name: "modes.spiral.halving_time", title: "Halving time of the spiral", dimension: "time", text: "Seconds in which a bank left alone halves; only where it dies." },
];

export const flightEntries: readonly FigureEntry[] = [
  { name: "flight.stall_speed", title: "Stall speed", dimension: "speed", text: "Slowest level flight, trimmed, where the wing's first section reaches its highest lift; flaps as the loading has them, propeller off." },
  { name: "flight.cruise_speed", title: "Cruise speed", dimension: "speed", text: "As the design gives it, else the speed of least drag, at least 1.3 × stall." },
  { name: "flight.glide_ratio", title: "Best glide ratio", dimension: "ratio", text: "Distance over height lost at the best speed in still air, without the drag of a propeller." },
  { name: "flight.sink_rate", title: "Least sink rate", dimension: "speed", text: "Height lost each second at the speed where that is least, without the drag of a propeller." },
  { name: "flight.power_off.glide_ratio", title: "Best glide ratio with motors off", dimension: "ratio", text: "Distance over height lost at the best speed in still air, with all motors off and propellers folded back, turned by the flight or standing still." },
  { name: "flight.power_off.sink_rate", title: "Least sink rate with motors off", dimension: "speed", text: "Height lost each second at the speed where that is least, with all motors off and propellers as they then stand." },
  { name: "flight.max_speed", title: "Top speed", dimension: "speed", text: "Fastest level flight at full throttle, packs half charged." },
  { name: "flight.climb_rate", title: "Best climb", dimension: "speed", text: "Height gained each second at full throttle, packs half charged, at the speed where that is most. Negative where it can't climb." },
  { name: "flight.climb_angle", title: "Steepest climb", dimension: "angle", text: "Steepest steady path at full throttle, packs half charged." },
  { name: "flight.best_range_speed", title: "Speed of the farthest flight", dimension: "speed", text: "Level speed at which the packs carry farthest in still air." },
  { name: "flight.endurance", title: "Longest flight", dimension: "time", text: "Level flight at the speed that takes least from the packs, on the usable charge less a tenth for the landing." },
  { name: "flight.range", title: "Farthest flight", dimension: "length", style: "distance", text: "Level flight at the speed that carries farthest in still air, on the usable charge less a tenth for the landing." },
  { name: "flight.takeoff_run", title: "Take-off run", dimension: "length", style: "distance", text: "From standing to 1.2 × stall on grass without wind; absent without wheels." },
  { name: "flight.landing_run", title: "Landing run", dimension: "length", style: "distance", text: "From touching down at 1.15 × stall on grass without wind or brakes; absent without wheels." },
  { name: "flight.takeoff_run_hard", title: "Take-off run on hard ground", dimension: "length", style: "distance", text: "From standing to 1.2 × stall on asphalt or concrete without wind; absent without wheels." },
  { name: "flight.landing_run_hard", title: "Landing run on hard ground", dimension: "length", style: "distance", text: "From touching down at 1.15 × stall on asphalt or concrete without wind or brakes; absent without wheels." },
  { name: "flight.landing_speed", title: "Approach speed for landing", dimension: "speed", text: "1.3 × stall, flaps as the loading has them, in calm air; touching down is at 1.15 × stall." },
  { name: "flight.hand_launch.sink", title: "Height lost in a hand launch", dimension: "length", text: "After a level throw at 8 m/s and full throttle, until the path is level again; 0 where that is over the stall. Absent on wheels. Hands clear of the propeller." },
  { name: "flight.hand_launch.climb", title: "Spare climb in a hand launch", dimension: "speed", text: "What full throttle can give as thrown, at 8 m/s: a rate of climb, or below the stall the same power in speed. Negative loses. Absent on wheels." },
  { name: "flight.turn_radius", title: "Turn radius", dimension: "length", style: "distance", text: "Level turn at 45° of bank and 1.3 × stall." },
  { name: "flight.ceiling", title: "Ceiling", dimension: "length", style: "distance", text: "Height over the sea where the best climb has faded to 100 ft/min." },
  { name: "flight.sortie.<path>.charge_left", title: "Charge left after a sortie", dimension: "ratio", style: "share", text: "Share of its capacity left in the emptiest flight pack at the sortie's end, from full." },
  { name: "flight.sortie.<path>.charge_used", title: "Charge used by a sortie", dimension: "charge", text: "What the flight packs give on all its legs together." },
  { name: "flight.sortie.<path>.time", title: "Time of a sortie", dimension: "time", text: "From its first leg to its last." },
  { name: "flight.sortie.<path>.distance", title: "Distance of a sortie", dimension: "length", style: "distance", text: "Way over level ground of all its legs, in still air." },
];
