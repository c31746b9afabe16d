import type { FigureEntry } from "./entry";

export const wingEntries: readonly FigureEntry[] = [
  { name: "wing.area", title: "Wing area", dimension: "area", text: "Reference area: all wings, both sides, projected on the plan, with the part inside a fuselage that carries across." },
  { name: "wing.span", title: "Span", dimension: "length", text: "Largest span of the wings, tip to tip, seen from above." },
  { name: "wing.mean_chord", title: "Mean aerodynamic chord", dimension: "length", text: "∫c² dy / ∫c dy over all wings: the chord that balance and stability are measured by." },
  { name: "wing.mean_chord_x", title: "Leading edge of the mean chord", dimension: "length", text: "Where the mean aerodynamic chord begins, aft of the datum." },
  { name: "wing.aspect_ratio", title: "Aspect ratio", dimension: "ratio", text: "Span² over wing area." },
  { name: "wing.loading", title: "Wing loading", dimension: "areal_density", text: "Weight over wing area." },
  { name: "wing.cube_loading", title: "Cubic wing loading", dimension: "density", text: "Weight over wing area to the power 1.5: a wing loading that can be compared between sizes." },
  { name: "wing.reynolds_stall", title: "Reynolds number at stall", dimension: "ratio", text: "Of the mean chord at stall speed. Under 60,000 thick sections lose much of their lift." },
  { name: "wing.reynolds_cruise", title: "Reynolds number at cruise", dimension: "ratio", text: "Of the mean chord at cruise speed." },
];

export const aeroEntries: readonly FigureEntry[] = [
  { name: "aero.lift_slope", title: "Lift slope", dimension: "per_angle", text: "Lift coefficient of the whole aircraft gained per radian of incidence, on the wing area." },
  { name: "aero.moment_slope", title: "Moment slope", dimension: "per_angle", text: "Pitching-moment coefficient per radian about the quarter of the mean chord, bodies included; nose up positive." },
  { name: "aero.downwash_slope", title: "Downwash slope", dimension: "ratio", text: "How much of each degree of incidence the wing's downwash takes from the tailplane." },
  { name: "aero.span_efficiency", title: "Span efficiency", dimension: "ratio", text: "Induced drag of an ellipse of the same span and lift over that of all surfaces together, at a lift coefficient of 0.5. 1 is the best of a flat wing." },
  { name: "aero.drag_parasite", title: "Parasite drag", dimension: "ratio", text: "Drag coefficient at cruise less that induced by lift, on the wing area: sections, bodies, gear, struts, gaps." },
  { name: "aero.lift_max", title: "Highest lift", dimension: "ratio", text: "Lift coefficient of the trimmed aircraft where the wing's first section reaches its limit." },
  { name: "aero.stall_station", title: "Where the wing stalls first", dimension: "ratio", style: "share", text: "Share of the half-span, from the plane of symmetry, where the wing's first section reaches its limit. 100 % is the tip." },
];

export const stabilityEntries: readonly FigureEntry[] = [
  { name: "stability.neutral_point", title: "Neutral point", dimension: "length", text: "Where the balance point would leave no pitch stability, aft of the datum; controls fixed, propeller off." },
  { name: "stability.static_margin", title: "Static margin", dimension: "ratio", style: "share", text: "How far the balance point lies ahead of the neutral point, in mean chords. Positive is stable." },
  { name: "stability.static_margin_powered", title: "Static margin under power", dimension: "ratio", style: "share", text: "The static margin with the propellers pulling as level flight at cruise asks: their own force across the flow, and their slipstream over wing and tail." },
  { name: "stability.cg_forward", title: "Forward limit of the balance point", dimension: "length", text: "Where full nose-up throw just brings the wing to its stall; with wheels also lifts the nose at 1.1 × stall, whichever is farther aft." },
  { name: "stability.cg_aft", title: "Aft limit of the balance point", dimension: "length", text: "Where the static margin is the least that the class asks for." },
  { name: "stability.tail_volume", title: "Tail volume", dimension: "ratio", text: "Tail area × arm over wing area × mean chord, quarter chord to quarter chord." },
  { name: "stability.canard_volume", title: "Canard volume", dimension: "ratio", text: "Canard area × arm over wing area × mean chord." },
  { name: "stability.fin_volume", title: "Fin volume", dimension: "ratio", text: "Fin area × arm over wing area × span; winglets and V-tails count by the sine of their slope." },
  { name: "stability.yaw_stiffness", title: "Yaw stiffness", dimension: "per_angle", text: "Yawing-moment coefficient per radian of sideslip about the balance point, bodies included. Positive turns the nose into the wind: stable." },
  { name: "stability.dihedral_effect", title: "Dihedral effect", dimension: "per_angle", text: "Rolling-moment coefficient per radian of sideslip, from dihedral, sweep, winglets and fins, at a lift coefficient of 0.5. Negative rolls away from the wind: stable." },
  { name: "stability.roll_damping", title: "Roll damping", dimension: "per_angle", text: "Rolling-moment coefficient per pb/2V. Negative slows a roll." },
  { name: "stability.pitch_damping", title: "Pitch damping", dimension: "per_angle", text: "Pitching-moment coefficient per qc̄/2V about the balance point. Negative slows a turn nose up." },
  { name: "stability.yaw_damping", title: "Yaw damping", dimension: "per_angle", text: "Yawing-moment coefficient per rb/2V about the balance point, at a lift coefficient of 0.5. Negative slows a turn." },
];
