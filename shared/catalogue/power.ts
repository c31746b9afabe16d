import type { FigureEntry } from "./entry";

export const powerEntries: readonly FigureEntry[] = [
  { name: "power.static_thrust", title: "Static thrust", dimension: "force", text: "Forward component of all shaft thrusts standing still, full throttle, packs half charged, less sag, in the air of the field." },
  { name: "power.thrust_to_weight", title: "Thrust to weight", dimension: "ratio", text: "Static thrust over weight." },
  { name: "power.static_current", title: "Static current", dimension: "current", text: "What all packs give together, standing still at full throttle, packs half charged." },
  { name: "power.static_power", title: "Static power", dimension: "power", text: "Electric power at the terminals of the packs, standing still at full throttle, packs half charged." },
  { name: "power.specific", title: "Power to weight", dimension: "power_per_mass", text: "Static power over weight." },
  { name: "power.efficiency", title: "Drive efficiency", dimension: "ratio", style: "share", text: "Shaft power over power at the terminals of the packs, standing still." },
  { name: "power.current_margin", title: "Current margin", dimension: "ratio", text: "Allowed over actual current standing still at full throttle on a full charge, the tightest of motors, controllers and packs. 1 is the limit." },
  { name: "power.thrust_margin", title: "Thrust margin", dimension: "ratio", text: "Thrust at full throttle over drag, level at 1.3 × stall. 1 is the limit." },
  { name: "power.<path>.static_rpm", title: "Static rpm", dimension: "rotation", text: "Speed of the propeller standing still at full throttle, packs half charged." },
  { name: "power.<path>.static_thrust", title: "Static thrust of one powerplant", dimension: "force", text: "Along its shaft, standing still at full throttle, packs half charged." },
  { name: "power.<path>.motor_heat", title: "Heat left in the motor", dimension: "power_per_mass", text: "Losses of a motor over its own weight, standing still at full throttle on a full charge." },
  { name: "power.<path>.bench_rpm", title: "Rpm over the bench's", dimension: "ratio", text: "Computed over measured speed of the propeller, for a run on the stand: `power.nose.full.bench_rpm` for `bench full`." },
  { name: "power.<path>.bench_amps", title: "Current over the bench's", dimension: "ratio", text: "Computed over measured current into the controller, for a run on the stand." },
  { name: "power.<path>.bench_thrust", title: "Thrust over the bench's", dimension: "ratio", text: "Computed over measured thrust, for a run on the stand." },
  { name: "power.<path>.static_current", title: "Static current of one powerplant", dimension: "current", text: "What it draws standing still at full throttle, packs half charged." },
];
