/**
 * Other names people know things by, from magazines, labels and shops. Written small, parts joined by `_`; looked up
 * only after the word itself turned out unknown.
 */
type Groups = Readonly<Record<string, readonly string[]>>;

const kindGroups: Groups = {
  wing: ["mainplane", "main_wing", "wings", "halfwing", "half_wing", "aerofoil_surface"],
  tailplane: ["stab", "stabiliser", "stabilizer", "horizontal_stabiliser", "horizontal_stabilizer", "hstab", "h_stab", "elevator_half",
    "horizontal_tail", "htail", "tail", "v_tail", "vtail", "tail_plane"],
  canard: ["foreplane", "front_wing"],
  fin: ["vertical_stabiliser", "vertical_stabilizer", "vstab", "v_stab", "vertical_tail", "vertical", "winglet", "tail_fin", "keel", "finlet"],
  panel: ["segment", "bay", "wing_panel", "tip_panel"],
  foil: ["airfoil", "aerofoil", "section", "profile", "wing_section"],
  aileron: ["ailerons"], elevator: ["elevators"], rudder: ["rudders"], flap: ["flaps"], elevon: ["elevons"],
  ruddervator: ["ruddervators", "v_tail_control", "tailerons"], flaperon: ["flaperons"],
  airbrake: ["airbrakes", "air_brake", "speedbrake", "speed_brake", "dive_brake", "crow"], spoiler: ["spoilers"],
  fuselage: ["fuse", "hull", "frame"],
  body: ["pod", "nacelle", "cowl", "cowling", "engine_pod"],
  boom: ["tail_boom", "tailboom"],
  station: ["former", "frame_station", "bulkhead", "cross_section"],
  strut: ["wing_strut", "brace", "lift_strut"], wire: ["bracing_wire", "flying_wire", "rigging"],
  item: ["payload", "ballast", "mass", "weight", "object", "component", "camera", "canopy", "hatch", "motor_mount", "firewall", "gps",
    "autopilot", "flight_controller", "gyro", "vtx", "wiring", "lead", "pushrod", "nose_weight", "equipment", "thing"],
  material: ["filament", "plastic", "stuff"],
  skin: ["shell", "covering", "cover", "sheeting", "planking", "surface"],
  part: ["stl", "mesh", "print", "printed_part", "model"],
  battery: ["lipo", "lihv", "liion", "li_ion", "life", "nimh", "pack", "accu", "akku", "flight_pack", "battery_pack", "cell"],
  powerplant: ["power", "engine", "drive", "propulsion", "power_system", "power_train", "drivetrain", "motor_pod"],
  motor: ["outrunner", "inrunner", "brushless", "emotor"],
  propeller: ["prop", "airscrew", "rotor", "blades"],
  fan: ["edf", "ducted_fan", "impeller"],
  esc: ["speed_controller", "speed_control", "controller", "regulator"],
  bench: ["test", "measurement", "test_stand", "run"],
  spar: ["tube", "rod", "wing_spar", "main_spar", "longeron", "wing_tube", "bar"],
  joint: ["joiner", "wing_joiner", "coupling"],
  gear: ["undercarriage", "landing_gear", "undercart", "uc", "chassis"],
  wheel: ["tyre", "tire", "mainwheel", "nosewheel", "tailwheel", "main_wheel", "nose_wheel", "tail_wheel"],
  skid: ["tail_skid", "runner"],
  servo: ["actuator", "servos"],
  receiver: ["rx", "radio"],
  supply: ["bec", "ubec", "sbec", "voltage_regulator", "receiver_pack", "receiver_battery"],
  printer: ["print_bed", "bed"],
  airframe: ["aircraft", "airplane", "aeroplane", "plane", "design", "model_aircraft"],
  air: ["atmosphere", "weather", "field", "environment"],
  loads: ["load", "load_factor", "load_factors"],
  loading: ["loadout", "configuration", "config", "case", "variant", "load_case"],
  limits: ["limit", "thresholds"],
  sortie: ["mission", "flight", "flight_plan", "flight_profile"], leg: ["phase", "stage", "flight_leg"],
  weighed: ["measured", "measured_mass", "balance", "scale"],
  assembly: ["group", "module", "subassembly", "component_group"],
  place: ["instance", "put", "mount"],
};

const propertyGroups: Groups = {
  at: ["position", "pos", "location", "place", "origin", "xyz", "centre", "center"],
  weight: ["mass", "wt", "grams"],
  diameter: ["diam", "dia", "d", "size_diameter"],
  span: ["half_span", "halfspan", "panel_span", "wingspan", "semi_span", "semispan", "length"],
  chord: ["root_chord", "tip_chord", "root", "tip", "chord_root", "chord_tip", "width"],
  sweep: ["sweep_le", "sweepback", "sweep_angle", "leading_edge_sweep"],
  sweep_quarter: ["quarter_chord_sweep", "sweep_c4", "sweep_quarter_chord"],
  offset: ["tip_offset", "le_offset"],
  dihedral: ["anhedral", "dihedral_angle", "cathedral"],
  twist: ["washin", "wash_in", "geometric_twist"], washout: ["wash_out"],
  foil: ["airfoil", "aerofoil", "section", "profile"],
  incidence: ["rigging_angle", "angle_of_incidence", "incidence_angle"],
  mirror: ["symmetric", "mirrored", "symmetry", "both_sides", "mirror_y"],
  balance: ["cg", "centre_of_gravity", "center_of_gravity", "balance_point"],
  along: ["span_range", "extent", "from_to", "start_end", "spanwise"],
  up: ["throw_up", "up_throw", "throw"], down: ["throw_down", "down_throw"],
  pivot: ["hinge", "hinge_line"],
  servo_arm: ["arm", "servo_arm_length"], horn: ["control_horn", "horn_length"],
  shape: ["naca", "outline", "cross_section"], lift_max: ["cl_max", "clmax", "max_lift"],
  zero_lift_angle: ["alpha_zero", "alpha0", "alpha_0"], moment: ["cm", "cm0", "pitching_moment"],
  start: ["begin", "point_a", "a"], end: ["finish", "point_b", "b"],
  size: ["dimensions", "box", "dims"], optional: ["removable"],
  density: ["specific_weight"], areal_density: ["gsm", "area_density", "surface_density", "weight_per_area"],
  modulus: ["youngs_modulus", "young_modulus", "e_modulus", "stiffness"], shear_modulus: ["g_modulus"],
  strength: ["tensile_strength", "yield_strength", "tension"], compression: ["compressive_strength"],
  softens_at: ["glass_transition", "softening_temperature", "heat_deflection"], layer_factor: ["layer_strength", "layer_adhesion"],
  wall: ["wall_thickness", "thickness", "walls", "perimeter"], rib_spacing: ["ribs", "rib_distance"], infill: ["fill", "infill_density"],
  cells: ["s", "cell_count", "series"], parallel: ["p"], chemistry: ["type"],
  capacity: ["mah", "ah", "charge"], c_rating: ["c", "discharge", "discharge_rate", "c_rate"],
  resistance: ["internal_resistance", "ri", "rm", "ir", "ohms", "winding_resistance", "r"],
  usable: ["depth_of_discharge", "dod", "reserve"], packs: ["batteries"], wired: ["wiring", "connection"],
  battery: ["pack", "source", "lipo"],
  down_thrust: ["downthrust"], right_thrust: ["rightthrust", "side_thrust", "sidethrust"], handed: ["counter_rotating", "contra"],
  kv: ["rpm_per_volt", "speed_constant", "velocity_constant"], no_load_current: ["i0", "io", "idle_current"],
  no_load_voltage: ["i0_voltage", "idle_voltage"],
  max_current: ["amps", "current", "rating", "rated_current", "continuous_current", "max_amps", "imax"],
  burst_current: ["burst", "peak_current", "burst_amps"], max_power: ["watts", "power", "rated_power"],
  gear_ratio: ["gearing", "reduction", "gear"], poles: ["magnets", "pole_count"],
  blades: ["blade_count", "number_of_blades"], blade: ["family", "blade_type"], rotation: ["direction", "spin", "turns"],
  max_rpm: ["rpm_limit", "rpm_max"], folding: ["folder"], bec: ["ubec", "sbec"],
  volts: ["voltage", "v"], amps: ["current", "max_current", "a"], rpm: ["speed"], thrust: ["pull"],
  outer: ["outer_diameter", "od", "outside_diameter", "diameter"], inner: ["inner_diameter", "id", "bore", "inside_diameter"],
  overlap: ["depth", "insertion"],
  travel: ["stroke", "suspension"], retracts: ["retractable"], steer: ["steering", "steerable"],
  torque: ["stall_torque"], stall_current: ["stall_amps"], speed: ["transit", "transit_time", "airspeed", "velocity"],
  outputs: ["channels", "ports"], supply: ["powered_by", "bec"],
  class: ["type", "category"], purpose: ["description", "mission"], datum: ["reference_point"],
  cruise: ["cruise_speed", "speed"], allowance: ["glue", "paint", "glue_and_paint"],
  altitude: ["elevation", "height"], temperature: ["temp"], wind: ["wind_speed"],
  without: ["minus", "remove", "except"], with: ["plus", "include", "add"], flaps: ["flap"],
  time: ["duration", "endurance"], distance: ["length", "range"], climb: ["climb_rate", "rate_of_climb", "rate"], glide: ["power_off", "motor_off"],
  bank: ["bank_angle", "roll"], equipment: ["avionics", "payload_power", "payload"],
  never_exceed: ["vne"], positive_g: ["g_limit", "max_g", "load_factor"],
  width: ["breadth"], height: ["depth", "altitude", "gain"], flip: ["flipped"], drop: ["omit", "exclude", "without", "remove"],
  bed: ["build_volume", "bed_size"], file: ["path", "stl"],
};

const wordGroups: Groups = {
  clockwise: ["cw", "right", "normal", "tractor"], anticlockwise: ["ccw", "counterclockwise", "counter_clockwise", "left", "reverse"],
  lipo: ["li_po", "lithium_polymer"], lihv: ["lipo_hv", "hv"], liion: ["li_ion", "18650", "21700", "lithium_ion"],
  life: ["lifepo", "lifepo4", "lfp", "a123"], nimh: ["ni_mh"],
  round: ["circle", "circular", "tube"], oval: ["ellipse", "elliptical"], box: ["square", "rectangle", "rectangular"],
  thin: ["thin_electric", "electric", "e"], wide: ["slow_flight", "slow_flyer", "slowfly", "sf"], thick: ["sport", "gas", "glow"],
  aerobatic: ["aerobatics", "pattern", "acro", "threed"], glider: ["sailplane", "soarer"],
  motor_glider: ["electric_glider", "powered_glider"], tailless: ["flying_wing", "wing", "plank", "delta"],
  camera: ["survey", "fpv", "mapping", "drone"], speed: ["racer", "pylon", "fast"], slow: ["slowflyer", "parkflyer", "park"],
  best_endurance: ["loiter", "endurance", "longest"], best_range: ["range", "farthest"], best_climb: ["climb", "vy"],
  best_glide: ["glide"], least_sink: ["min_sink", "minimum_sink", "best_sink"], full: ["max", "full_throttle"],
  seaplane: ["flying_boat", "floatplane", "amphibian"], trainer: ["beginner"], scale: ["warbird"],
};

const invert = (groups: Groups): ReadonlyMap<string, readonly string[]> => {
  const out = new Map<string, string[]>();
  for (const [name, others] of Object.entries(groups)) for (const other of others) out.set(other, [...(out.get(other) ?? []), name]);
  return out;
};

const [byKind, byProperty, byWord] = [kindGroups, propertyGroups, wordGroups].map(invert);

/** `Landing-Gear` and `landing gear` are `landing_gear`. */
const plainWord = (word: string) => word.toLowerCase().replace(/[-\s]+/g, "_");

const among = (map: ReadonlyMap<string, readonly string[]>, word: string, known: (name: string) => boolean): string | undefined => {
  const plain = plainWord(word);
  return known(plain) && plain !== word ? plain : map.get(plain)?.find(known);
};

/** The kind a word usually means, of those that `known` lets pass: `stab` → `tailplane`, `ESC` → `esc`. */
export const usualKind = (word: string, known: (name: string) => boolean): string | undefined => among(byKind, word, known);

/** The same for the name of a property: `mass` → `weight`. */
export const usualProperty = (word: string, known: (name: string) => boolean): string | undefined => among(byProperty, word, known);

/** The same for a word that stands as a value: `ccw` → `anticlockwise`. */
export const usualWord = (word: string, known: (name: string) => boolean): string | undefined => among(byWord, word, known);

/** All known other names, for tests. */
export const synonymGroups = { kinds: kindGroups, properties: propertyGroups, words: wordGroups } as const;
