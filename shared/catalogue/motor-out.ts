import type { FigureEntry } from "./entry";

export const motorOutEntries: readonly FigureEntry[] = [
  {
    name: "motor_out.<path>.minimum_control_speed", title: "Minimum control speed", dimension: "speed",
    text: "With this powerplant dead and the rest at full throttle: the lowest speed from which up the controls hold it straight, banked up to 5°.",
  },
  {
    name: "motor_out.<path>.rudder", title: "Rudder with a motor dead", dimension: "angle",
    text: "How far the rudder is turned to fly straight at 1.2 × stall with this powerplant dead and the rest at full throttle, trailing edge left positive.",
  },
  {
    name: "motor_out.<path>.climb_rate", title: "Climb with a motor dead", dimension: "speed",
    text: "Best climb with this powerplant dead and the rest at full throttle, with the drag of holding it straight, no slower than it can be held. Negative sinks.",
  },
];
