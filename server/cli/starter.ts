/** A small sound design to begin from: a sport model of a metre and a half. `{title}` is put in. */
const text = `# Places are measured from the datum: x aft, y to the right wing tip, z up.
airframe "{title}" { datum = "firewall" ; class = sport }

wing main {
  at        = (160 mm, 0 mm, 40 mm)
  foil      = naca("2412")
  incidence = 2 deg
  weight    = 300 g ± 15 g
  panel half { span = 700 mm ; chord = 220 mm to 180 mm ; dihedral = 4 deg ; washout = 2 deg }
}

tailplane stab {
  at     = (680 mm, 0 mm, 20 mm)
  foil   = naca("0009")
  weight = 50 g
  panel half { span = 240 mm ; chord = 150 mm to 110 mm }
}

fin upright {
  at     = (680 mm, 0 mm, 25 mm)
  foil   = naca("0009")
  weight = 25 g
  panel only { span = 170 mm ; chord = 160 mm to 100 mm ; sweep = 20 deg }
}

fuselage hull {
  at     = (0 mm, 0 mm, 0 mm)
  length = 840 mm
  width  = 80 mm
  height = 95 mm
  weight = 220 g ± 15 g
}

battery pack {
  cells    = 3
  capacity = 2200 mAh
  c_rating = 30
  weight   = 185 g
  at       = (20 mm, 0 mm, -15 mm)
}

powerplant nose {
  at           = (-30 mm, 0 mm, 5 mm)
  battery      = pack
  down_thrust  = 2 deg
  right_thrust = 2 deg
  motor {
    kv              = 920 rpm/V
    resistance      = 60 mohm
    no_load_current = 0.9 A
    no_load_voltage = 10 V
    max_current     = 32 A
    weight          = 74 g
  }
  propeller { diameter = 10 in ; pitch = 5 in ; weight = 18 g }
  esc { max_current = 40 A ; weight = 36 g ; at = (25 mm, 0 mm, 0 mm) }
}

item radio { weight = 70 g ; at = (120 mm, 0 mm, -10 mm) }  # receiver and servos

require stability.static_margin within 5 % .. 20 %
require power.thrust_to_weight >= 0.5
`;

export const starter = (title: string): string => text.replace("{title}", title.replace(/[\\"]/g, "\\$&"));
